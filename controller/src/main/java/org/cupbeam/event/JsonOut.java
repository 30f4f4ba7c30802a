package org.cupbeam.event;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.MinimalPrettyPrinter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.cupbeam.drill.Worded;

/**
 * Writes one JSON object, key by key, in the order of the calls. Streaming, since a lane is to be ready before a
 * data-binding mapper would have looked at its first class.
 */
final class JsonOut {
    private static final JsonFactory JSON = new JsonFactory();
    /** Digits written out; what would take more is written with an exponent, since a reader takes so many and no more. */
    private static final int PLAIN_MAX = 40;

    private final JsonGenerator to;

    private JsonOut(JsonGenerator to) {
        this.to = to;
    }

    /** @throws IllegalStateException if it comes out larger than any reader of ours takes */
    static byte[] bytes(Consumer<JsonOut> body) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1024);
        try (JsonGenerator to = JSON.createGenerator(bytes)) {
            whole(to, body);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (bytes.size() > JsonIn.LIMIT_BYTES) {
            throw new IllegalStateException("a message of " + bytes.size() + " bytes, over " + JsonIn.LIMIT_BYTES);
        }
        return bytes.toByteArray();
    }

    /** The same as one line of text, a space after each comma and colon. */
    static String line(Consumer<JsonOut> body) {
        StringWriter text = new StringWriter(256);
        try (JsonGenerator to = JSON.createGenerator(text)) {
            to.setPrettyPrinter(new Spaced());
            whole(to, body);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void whole(JsonGenerator to, Consumer<JsonOut> body) throws IOException {
        to.writeStartObject();
        body.accept(new JsonOut(to));
        to.writeEndObject();
    }

    JsonOut text(String key, String valueOrNull) {
        return put(key, () -> to.writeString(valueOrNull));
    }

    JsonOut word(String key, Worded valueOrNull) {
        return text(key, valueOrNull == null ? null : valueOrNull.word());
    }

    JsonOut flag(String key, boolean value) {
        return put(key, () -> to.writeBoolean(value));
    }

    JsonOut whole(String key, long value) {
        return put(key, () -> to.writeNumber(value));
    }

    JsonOut sequence(String key, long value) {
        return text(key, Sequence.text(value));
    }

    /** As given; NaN is null. */
    JsonOut number(String key, double value) {
        return put(key, () -> plain(value));
    }

    /** To a tenth (0.1 mm, 0.1 mm/s); NaN is null. */
    JsonOut tenth(String key, double value) {
        return number(key, rounded(value, 10));
    }

    JsonOut tenths(String key, double... values) {
        return put(key, () -> {
            to.writeStartArray();
            for (double each : values) {
                plain(rounded(each, 10));
            }
            to.writeEndArray();
        });
    }

    JsonOut object(String key, Consumer<JsonOut> body) {
        return put(key, () -> whole(to, body));
    }

    JsonOut objectOrNull(String key, Object valueOrNull, Consumer<JsonOut> body) {
        return valueOrNull == null ? text(key, null) : object(key, body);
    }

    <T> JsonOut objects(String key, List<T> values, BiConsumer<JsonOut, T> body) {
        return put(key, () -> {
            to.writeStartArray();
            for (T each : values) {
                whole(to, out -> body.accept(out, each));
            }
            to.writeEndArray();
        });
    }

    JsonOut texts(String key, List<String> values) {
        return put(key, () -> {
            to.writeStartArray();
            for (String each : values) {
                to.writeString(each);
            }
            to.writeEndArray();
        });
    }

    JsonOut numbers(String key, List<Double> values) {
        return put(key, () -> {
            to.writeStartArray();
            for (double each : values) {
                plain(each);
            }
            to.writeEndArray();
        });
    }

    static double rounded(double value, double perUnit) {
        return Math.abs(value) < 1e12 ? Math.round(value * perUnit) / perUnit + 0.0 : value;
    }

    private void plain(double value) throws IOException {
        if (Double.isNaN(value)) {
            to.writeNull();
        } else if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            to.writeNumber((long) value);
        } else {
            BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
            String plain = exact.toPlainString();
            to.writeNumber(plain.length() <= PLAIN_MAX ? plain : exact.toString());
        }
    }

    private JsonOut put(String key, Step value) {
        try {
            to.writeFieldName(key);
            value.run();
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private interface Step {
        void run() throws IOException;
    }

    private static final class Spaced extends MinimalPrettyPrinter {
        private static final long serialVersionUID = 1L;

        @Override
        public void writeObjectFieldValueSeparator(JsonGenerator to) throws IOException {
            to.writeRaw(": ");
        }

        @Override
        public void writeObjectEntrySeparator(JsonGenerator to) throws IOException {
            to.writeRaw(", ");
        }

        @Override
        public void writeArrayValueSeparator(JsonGenerator to) throws IOException {
            to.writeRaw(", ");
        }
    }
}
