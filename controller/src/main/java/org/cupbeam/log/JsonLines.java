package org.cupbeam.log;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.InstantSource;
import java.util.Locale;

/**
 * Lines of the log as JSON, an object a line, for a program that collects them: {@code time} (UTC, of the writing), {@code
 * level} (error, warn, notice, info, debug, trace), {@code from} (whose line it is; not with a notice) and {@code said}. A
 * line that goes on with the one before, as those of a stack trace, has its level and {@code "more": true}.
 */
final class JsonLines extends LaidOut {
    private static final JsonFactory JSON = new JsonFactory();

    private final InstantSource clock;

    JsonLines(OutputStream to, InstantSource clock) {
        super(to);
        this.clock = clock;
    }

    @Override
    String layOut(Line line) {
        if (line.said().isEmpty()) {
            return "";
        }
        StringWriter text = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(text)) {
            json.writeStartObject();
            json.writeStringField("time", clock.instant().toString());
            json.writeStringField("level", line.level().name().toLowerCase(Locale.ROOT));
            if (!line.from().isEmpty()) {
                json.writeStringField("from", line.from());
            }
            json.writeStringField("said", line.said());
            if (line.more()) {
                json.writeBooleanField("more", true);
            }
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("written to memory", e);
        }
        return text.append('\n').toString();
    }
}
