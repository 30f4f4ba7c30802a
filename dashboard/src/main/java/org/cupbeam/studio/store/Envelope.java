package org.cupbeam.studio.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.function.Predicate;

/** The text of an event, changed in one place and otherwise as it was. */
final class Envelope {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES).build();

    private Envelope() {
    }

    /** With every text value that is meant replaced. */
    static String replaced(String envelope, Predicate<String> meant, String by) throws JsonProcessingException {
        JsonNode root = JSON.readTree(envelope);
        return replace(root, meant, by) ? JSON.writeValueAsString(root) : envelope;
    }

    private static boolean replace(JsonNode node, Predicate<String> meant, String by) {
        boolean changed = false;
        if (node instanceof ObjectNode object) {
            for (var field : object.properties()) {
                if (field.getValue() instanceof TextNode text && meant.test(text.textValue())) {
                    field.setValue(TextNode.valueOf(by));
                    changed = true;
                } else {
                    changed |= replace(field.getValue(), meant, by);
                }
            }
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.get(i) instanceof TextNode text && meant.test(text.textValue())) {
                    array.set(i, by);
                    changed = true;
                } else {
                    changed |= replace(array.get(i), meant, by);
                }
            }
        }
        return changed;
    }
}
