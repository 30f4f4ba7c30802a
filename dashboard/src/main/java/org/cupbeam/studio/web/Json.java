package org.cupbeam.studio.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;

/** JSON for the pages, from records: keys in snake_case, as on the wire. What lanes send is put into JSON elsewhere. */
final class Json {
    private static final ObjectMapper MAPPER =
            JsonMapper.builder().propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE).build();

    private Json() {
    }

    static byte[] bytes(Object record) {
        try {
            return MAPPER.writeValueAsBytes(record);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a record of ours that is no JSON: " + record, e);
        }
    }
}
