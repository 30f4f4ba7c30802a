package org.cupbeam.studio.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.function.BinaryOperator;

/** The text of an event, changed in one place and otherwise as it was. */
final class Envelope {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES).build();

    private Envelope() {
    }

    /** With every text value as {@code change} has it, which is given its field's name (null in a list) and the text. */
    static String changed(String envelope, BinaryOperator<String> change) throws JsonProcessingException {
        JsonNode root = JSON.readTree(envelope);
        return change(root, change) ? JSON.writeValueAsString(root) : envelope;
    }

    private static boolean change(JsonNode node, BinaryOperator<String> change) {
        boolean changed = false;
        if (node instanceof ObjectNode object) {
            for (var field : object.properties()) {
                if (field.getValue() instanceof TextNode text) {
                    String now = change.apply(field.getKey(), text.textValue());
                    changed |= !now.equals(text.textValue());
                    field.setValue(TextNode.valueOf(now));
                } else {
                    changed |= change(field.getValue(), change);
                }
            }
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.get(i) instanceof TextNode text) {
                    String now = change.apply(null, text.textValue());
                    changed |= !now.equals(text.textValue());
                    array.set(i, now);
                } else {
                    changed |= change(array.get(i), change);
                }
            }
        }
        return changed;
    }
}
