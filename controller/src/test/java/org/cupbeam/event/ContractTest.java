package org.cupbeam.event;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.yaml.snakeyaml.Yaml;

/** Real messages against the published description, {@code docs/asyncapi.yaml} and its schemas. */
class ContractTest {
    private static final Path DOCS = Path.of("../docs").toAbsolutePath().normalize();
    private static final ObjectMapper JSON = new ObjectMapper();
    private static JsonNode api;

    @BeforeAll
    static void read() throws IOException {
        try (Reader text = Files.newBufferedReader(DOCS.resolve("asyncapi.yaml"))) {
            api = JSON.valueToTree(new Yaml().load(text));
        }
    }

    @Test
    void everyTopicIsDescribedWithItsRetention() {
        Map<String, Boolean> retained = new LinkedHashMap<>();
        api.path("operations").forEach(operation -> retained.put(
                resolve(operation.path("channel")).path("address").asText(),
                operation.at("/bindings/mqtt/retain").asBoolean()));
        assertThat(retained).hasSize(Topics.Kind.values().length);
        for (Topics.Kind kind : Topics.Kind.values()) {
            String address = new Topics("s", "l").of(kind).replace("/s/l/", "/{studio}/{lane}/");
            assertThat(retained).containsEntry(address, kind.retained());
        }
    }

    @Test
    void everyReferenceInTheDescriptionLeadsSomewhere() {
        api.findValues("$ref").forEach(ref -> {
            String to = ref.asText();
            if (to.startsWith("#")) {
                assertThat(api.at(to.substring(1)).isMissingNode()).as(to).isFalse();
            } else {
                assertThat(DOCS.resolve(to)).exists();
            }
        });
    }

    @Test
    void everyMessageIsAsDescribed() throws IOException {
        for (Sample each : samples()) {
            assertThat(faults(each.message, each.json)).as(each.json.toString()).isEmpty();
        }
    }

    @Test
    void aMessageThatLacksAKeyWhichAReaderNeedsIsNotAsDescribed() throws IOException {
        int refusedByReader = 0;
        for (Sample each : samples()) {
            for (JsonNode spoiled : eachSpoiled(each.json, Spoil.WITHOUT)) {
                if (!reads(each.message, spoiled)) {
                    refusedByReader++;
                    assertThat(faults(each.message, spoiled)).as(each.message + " " + spoiled).isNotEmpty();
                }
            }
        }
        assertThat(refusedByReader).isGreaterThan(100);
    }

    @Test
    void aMessageWithAValueOfTheWrongKindIsNeitherAsDescribedNorRead() throws IOException {
        for (Sample each : samples()) {
            for (JsonNode spoiled : eachSpoiled(each.json, Spoil.OBJECT)) {
                assertThat(faults(each.message, spoiled)).as(each.message + " " + spoiled).isNotEmpty();
                boolean onlyMediaType = spoiled.path("datacontenttype").isObject();
                assertThat(reads(each.message, spoiled)).as(each.message + " " + spoiled).isEqualTo(onlyMediaType);
            }
        }
    }

    @Test
    void aMessageOfALaterVersionWithMoreKeysIsReadAllTheSame() throws IOException {
        for (Sample each : samples()) {
            ObjectNode more = each.json.deepCopy();
            more.put("humidity_percent", 40);
            objects(more).forEach(object -> object.putArray("later").add(1));
            assertThat(faults(each.message, more)).isEmpty();
            assertThat(reads(each.message, more)).isTrue();
        }
    }

    private record Sample(String message, ObjectNode json) {
    }

    private static List<Sample> samples() throws IOException {
        List<Sample> all = new ArrayList<>();
        for (Event each : Samples.events()) {
            String type = each.data().type();
            all.add(new Sample(type.substring("org.cupbeam.".length(), type.length() - ".v1".length()),
                    object(EventJson.encode(each))));
        }
        for (Score each : Samples.scores()) {
            all.add(new Sample("score", object(ScoreJson.encode(each))));
        }
        for (Health each : Samples.healths()) {
            all.add(new Sample("health", object(HealthJson.encode(each))));
        }
        for (Command each : Samples.commands()) {
            all.add(new Sample("command", object(CommandJson.encode(each))));
        }
        for (Answer each : Samples.answers()) {
            all.add(new Sample("answer", object(CommandJson.encode(each))));
        }
        all.add(new Sample("stored", object(StoredJson.encode(new Stored("7f3c9a", 42)))));
        return all;
    }

    private static boolean reads(String message, JsonNode json) throws IOException {
        byte[] payload = JSON.writeValueAsBytes(json);
        try {
            switch (message) {
                case "score" -> ScoreJson.decode(payload);
                case "health" -> HealthJson.decode(payload);
                case "command" -> CommandJson.decode(payload);
                case "answer" -> CommandJson.decodeAnswer(payload);
                case "stored" -> StoredJson.decode(payload);
                default -> EventJson.decode(payload);
            }
            return true;
        } catch (BadMessage e) {
            return false;
        }
    }

    private static List<String> faults(String message, JsonNode json) {
        String file = api.at("/components/messages/" + message + "/payload/$ref").asText();
        JsonSchema schema = JsonSchemaFactory.getInstance(VersionFlag.V7)
                .getSchema(SchemaLocation.of(DOCS.resolve(file).toUri().toString()));
        return schema.validate(json).stream().map(Object::toString).toList();
    }

    private enum Spoil { WITHOUT, OBJECT }

    /** The message once for each of its keys, that key left out or given an object that nobody expects. */
    private static List<JsonNode> eachSpoiled(ObjectNode json, Spoil how) {
        List<JsonNode> all = new ArrayList<>();
        int objects = objects(json).size();
        for (int i = 0; i < objects; i++) {
            List<String> keys = new ArrayList<>();
            objects(json).get(i).fieldNames().forEachRemaining(keys::add);
            for (String key : keys) {
                ObjectNode copy = json.deepCopy();
                ObjectNode object = objects(copy).get(i);
                boolean takesAnObject = key.equals("tags") || key.equals("overshoot")
                        && object.get(key).isObject() || key.equals("duel") && object.get(key).isObject();
                if (how == Spoil.WITHOUT) {
                    object.remove(key);
                    all.add(copy);
                } else if (!takesAnObject) {
                    object.putObject(key);
                    all.add(copy);
                }
            }
        }
        return all;
    }

    private static List<ObjectNode> objects(JsonNode node) {
        List<ObjectNode> all = new ArrayList<>();
        Consumer<JsonNode> visit = new Consumer<>() {
            @Override
            public void accept(JsonNode each) {
                if (each instanceof ObjectNode object) {
                    all.add(object);
                }
                if (each instanceof ObjectNode || each instanceof ArrayNode) {
                    each.forEach(this);
                }
            }
        };
        visit.accept(node);
        return all;
    }

    private static ObjectNode object(byte[] payload) throws IOException {
        return (ObjectNode) JSON.readTree(payload);
    }

    private static JsonNode resolve(JsonNode ref) {
        return api.at(ref.path("$ref").asText().substring(1));
    }
}
