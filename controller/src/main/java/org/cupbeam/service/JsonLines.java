package org.cupbeam.service;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lines of the log as JSON, an object a line, for a program that collects them: {@code time} (UTC, of the writing), {@code
 * level} (error, warn, info, debug, trace, notice), {@code from} (whose line it is; not with a notice) and {@code said}. A
 * line that has no level of its own, as those of a stack trace, has that of the line before, and {@code "more": true}.
 */
public final class JsonLines extends PrintStream {
    private static final Pattern LINE = Pattern.compile(
            "(?:[0-9:.TZ+-]+ )?(?:\\[[^]]*\\] )?(ERROR|WARN|INFO|DEBUG|TRACE) (\\S+) - (.*)", Pattern.DOTALL);
    private static final String NOTICE = "notice";
    private static final JsonFactory JSON = new JsonFactory();

    private final InstantSource clock;
    private String level = NOTICE;
    private String from;

    JsonLines(OutputStream to, InstantSource clock) {
        super(to, true, StandardCharsets.UTF_8);
        this.clock = clock;
    }

    /** Has standard error written so, where the environment's CUPBEAM_LOG is {@code json}. @return whether it is */
    public static boolean whereWanted() {
        boolean wanted = "json".equals(System.getenv("CUPBEAM_LOG"));
        if (wanted) {
            System.setErr(new JsonLines(System.err, InstantSource.system()));
        }
        return wanted;
    }

    @Override
    public void println(String line) {
        Matcher own = LINE.matcher(line);
        if (own.matches()) {
            level = own.group(1).toLowerCase(Locale.ROOT);
            from = own.group(2);
            super.println(json(own.group(3), false));
        } else if (line.startsWith("\t") || line.startsWith("Caused by:")) {
            super.println(json(line, true));
        } else {
            level = NOTICE;
            from = null;
            super.println(json(line, false));
        }
    }

    /** Stack traces come so. */
    @Override
    public void println(Object line) {
        super.println(json(String.valueOf(line), true));
    }

    private String json(String said, boolean more) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(text)) {
            json.writeStartObject();
            json.writeStringField("time", clock.instant().toString());
            json.writeStringField("level", level);
            if (from != null) {
                json.writeStringField("from", from);
            }
            json.writeStringField("said", said);
            if (more) {
                json.writeBooleanField("more", true);
            }
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("written to memory", e);
        }
        return text.toString();
    }
}
