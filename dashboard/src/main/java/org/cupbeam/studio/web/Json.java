package org.cupbeam.studio.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.javalin.http.Context;
import java.io.IOException;

/** JSON for the pages, from records: keys in snake_case, as on the wire. What lanes send is put into JSON elsewhere. */
final class Json {
    private static final int LONGEST_REASON = 300;
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private Json() {
    }

    static byte[] bytes(Object record) {
        try {
            return MAPPER.writeValueAsBytes(record);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a record of ours that is no JSON: " + record, e);
        }
    }

    /** Answers with a record. */
    static void send(Context ctx, Object record) {
        ctx.contentType("application/json").header("Cache-Control", "no-store").result(bytes(record));
    }

    /** What was sent, as a record; what is not there is null or zero. */
    static <T> T read(Context ctx, Class<T> record) {
        try {
            T read = MAPPER.readValue(ctx.bodyAsBytes(), record);
            if (read != null) {
                return read;
            }
        } catch (JsonProcessingException e) {
            String why = e.getOriginalMessage();
            throw Refusal.badRequest("What was sent is not what is asked for here: "
                    + (why.length() <= LONGEST_REASON ? why : why.substring(0, LONGEST_REASON) + "…"));
        } catch (IOException e) { // the connection broke off, or these are no characters
            throw Refusal.badRequest("What was sent did not come whole, or is not text in UTF-8.");
        }
        throw Refusal.badRequest("Nothing was sent.");
    }
}
