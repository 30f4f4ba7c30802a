package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.DrillJson;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The shelf of drills, over HTTP. */
class DrillRoutesTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path folder;
    private Store store;
    private WebServer web;
    private Visit visit;

    @BeforeEach
    void start() throws Exception {
        store = Store.open(Database.file(folder.resolve("studio.db")));
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set("739205");
        web = new WebServer(store, new LiveLanes("test"), pin).start("127.0.0.1", 0);
        visit = new Visit(web.port()).signIn("739205", "Kim");
    }

    @AfterEach
    void stop() {
        web.close();
        store.close();
    }

    @Test
    void listsThoseOfTheProductAndTheStudiosOwn() throws Exception {
        create("Our own");
        JsonNode list = Visit.json(visit.get("/api/drills"));

        assertThat(list.get("presets")).extracting(each -> each.get("key").asText())
                .containsExactlyElementsOf(DrillFile.presets());
        assertThat(list.at("/own/0/drill/name").asText()).isEqualTo("Our own");
        assertThat(list.at("/own/0/changed_by").asText()).isEqualTo("Kim");
    }

    @Test
    void aNameIsNeverTakenForMarkup() throws Exception {
        String hostile = "<script>alert(1)</script>\"'&{}\u202e${x}";
        int id = create(hostile).get("id").asInt();

        assertThat(Visit.json(visit.get("/api/drills")).at("/own/0/drill/name").asText()).isEqualTo(hostile);
        HttpResponse<String> file = visit.get("/api/drills/" + id + "/file");
        assertThat(file.headers().firstValue("Content-Disposition"))
                .contains("attachment; filename=\"script-alert-1-script-x.toml\"");
        assertThat(file.headers().firstValue("Content-Type").orElseThrow()).startsWith("application/toml");
        assertThat(DrillFile.parse("f", file.body()).name()).isEqualTo(hostile);
    }

    @Test
    void changesAndUndoes() throws Exception {
        JsonNode made = create("Our own");
        ObjectNode drill = drill("Our own");
        ((ObjectNode) drill.get("balls")).put("count", 9);
        HttpResponse<String> changed = visit.send("PUT", "/api/drills/1", Map.of("drill", drill, "version", 1));
        assertThat(Visit.json(changed).get("version").asInt()).isEqualTo(2);

        HttpResponse<String> late = visit.send("PUT", "/api/drills/1", Map.of("drill", made.get("drill"), "version", 1));
        assertThat(late.statusCode()).isEqualTo(409);
        assertThat(Visit.json(late).get("error").asText()).startsWith("Somebody has changed this drill in the meantime");
        assertThat(visit.send("DELETE", "/api/drills/1", Map.of("version", 2)).statusCode()).isEqualTo(204);
        assertThat(visit.get("/api/drills/1/file").statusCode()).isEqualTo(404);
        assertThat(visit.send("POST", "/api/drills/1/put-back", Map.of()).statusCode()).isEqualTo(200);
        assertThat(visit.get("/api/drills/1/file").body()).contains("count = 9");
    }

    @Test
    void refusesWhatCannotBePlayedAndSaysWhy() throws Exception {
        ObjectNode drill = drill("Our own");
        ((ObjectNode) drill.get("balls")).put("count", 0);
        HttpResponse<String> answer = visit.send("POST", "/api/drills", Map.of("drill", drill));

        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(Visit.json(answer).get("error").asText()).contains("balls.count").contains("is 0");
        assertThat(visit.send("POST", "/api/drills", Map.of()).statusCode()).isEqualTo(400);
        assertThat(visit.send("PUT", "/api/drills/1", Map.of("drill", drill("X"))).statusCode()).isEqualTo(400);
        assertThat(visit.send("PUT", "/api/drills/x", Map.of("drill", drill("X"), "version", 1)).statusCode()).isEqualTo(404);
    }

    @Test
    void readsAFileAndSaysWhatIsWrongByLineAndKey() throws Exception {
        String text = DrillFile.presetText("ladder");
        JsonNode good = Visit.json(visit.send("POST", "/api/drill-text/read", Map.of("text", text)));
        assertThat(good.get("faults")).isEmpty();
        assertThat(DrillJson.read(good.get("drill").toString())).isEqualTo(DrillFile.preset("ladder"));

        String broken = text.replace("count = 6", "count = 0").replace("penalty", "penaltie");
        JsonNode faults = Visit.json(visit.send("POST", "/api/drill-text/read", Map.of("text", broken))).get("faults");
        assertThat(faults).extracting(each -> each.get("key").asText()).contains("balls.count", "overshoot.penaltie");
        int line = broken.substring(0, broken.indexOf("count = 0")).split("\n", -1).length;
        assertThat(faults.get(0).get("line").asInt()).isEqualTo(line);
        assertThat(faults.get(0).get("remedy").asText()).isNotBlank();
    }

    @Test
    void writesADrillAsAFileThatReadsAsTheSame() throws Exception {
        for (String preset : DrillFile.presets()) {
            Map<String, Object> body = Map.of("drill", JSON.readTree(DrillJson.text(DrillFile.preset(preset))));
            String text = Visit.json(visit.send("POST", "/api/drill-text/write", body)).get("text").asText();
            assertThat(DrillFile.parse(preset, text)).isEqualTo(DrillFile.preset(preset));
        }
    }

    @Test
    void givesAPresetWithItsComments() throws Exception {
        assertThat(visit.get("/api/presets/ladder/file").body()).isEqualTo(DrillFile.presetText("ladder"));
        assertThat(visit.get("/api/presets/..%2f..%2fetc/file").statusCode()).isEqualTo(400);
        assertThat(visit.get("/api/presets/nothing/file").statusCode()).isEqualTo(404);
    }

    @Test
    void rehearsesADrill() throws Exception {
        JsonNode played = Visit.json(visit.send("POST", "/api/drill-rehearsal",
                Map.of("drill", drill("Our own"), "duel", true, "putts", "hh")));

        assertThat(played.get("lines")).extracting(each -> each.get("player").asText()).containsExactly("Ada", "Bo");
        assertThat(played.at("/lines/0/putt").asText()).isEqualTo("h");
        assertThat(visit.send("POST", "/api/drill-rehearsal", Map.of("drill", drill("D"), "putts", "x")).statusCode()).isEqualTo(400);
    }

    private JsonNode create(String name) throws Exception {
        HttpResponse<String> answer = visit.send("POST", "/api/drills", Map.of("drill", drill(name)));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return Visit.json(answer);
    }

    private static ObjectNode drill(String name) throws Exception {
        return ((ObjectNode) JSON.readTree(DrillJson.text(DrillFile.preset("ladder")))).put("name", name);
    }
}
