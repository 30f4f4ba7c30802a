package org.cupbeam.event;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads a payload into {@link Fields}; refuses what is too large, not UTF-8, not JSON, or not one object. */
final class JsonIn {
    /** The largest payload that anyone of ours reads or writes. */
    static final int LIMIT_BYTES = 64 * 1024;

    private static final JsonFactory JSON = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(16).maxNumberLength(64).build())
            .build();

    private JsonIn() {
    }

    static Fields object(byte[] payload) throws BadMessage {
        if (payload.length > LIMIT_BYTES) {
            throw new BadMessage("payload", payload.length + " bytes", "at most " + LIMIT_BYTES + " are read");
        }
        try (JsonParser from = JSON.createParser(utf8(payload))) {
            if (from.nextToken() != JsonToken.START_OBJECT) {
                throw new BadMessage("payload", "is not a JSON object", "send one, as {\"…\": …}");
            }
            Map<String, Object> map = map(from);
            if (from.nextToken() != null) {
                throw new BadMessage("payload", "something follows the object", "send one object a message");
            }
            return new Fields("", map);
        } catch (JsonProcessingException e) {
            int at = e.getLocation() == null ? 0 : (int) e.getLocation().getCharOffset();
            throw new BadMessage("payload, character " + at, "is not JSON (" + firstLine(e) + ")", "send valid JSON");
        } catch (IOException e) {
            throw new BadMessage("payload", e.toString(), "send valid JSON");
        }
    }

    private static String utf8(byte[] payload) throws BadMessage {
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(payload)).toString();
        } catch (CharacterCodingException e) {
            throw new BadMessage("payload", "is not UTF-8", "send JSON in UTF-8");
        }
    }

    private static Map<String, Object> map(JsonParser from) throws IOException, BadMessage {
        Map<String, Object> map = new LinkedHashMap<>();
        while (from.nextToken() != JsonToken.END_OBJECT) {
            String key = from.currentName();
            from.nextToken();
            if (map.containsKey(key)) {
                throw new BadMessage(key.isBlank() ? "a key without a name" : key, "is there twice in one object", "say it once");
            }
            map.put(key, value(from));
        }
        return map;
    }

    private static Object value(JsonParser from) throws IOException, BadMessage {
        return switch (from.currentToken()) {
            case START_OBJECT -> map(from);
            case START_ARRAY -> list(from);
            case VALUE_STRING -> from.getText();
            case VALUE_TRUE -> Boolean.TRUE;
            case VALUE_FALSE -> Boolean.FALSE;
            case VALUE_NUMBER_INT -> from.getNumberType() == JsonParser.NumberType.BIG_INTEGER
                    ? (Object) from.getDoubleValue() : (Object) from.getLongValue();
            case VALUE_NUMBER_FLOAT -> from.getDoubleValue();
            default -> null;
        };
    }

    private static List<Object> list(JsonParser from) throws IOException, BadMessage {
        List<Object> list = new ArrayList<>();
        while (from.nextToken() != JsonToken.END_ARRAY) {
            list.add(value(from));
        }
        return list;
    }

    private static String firstLine(JsonProcessingException e) {
        return e.getOriginalMessage().lines().findFirst().orElse("no reason given");
    }
}
