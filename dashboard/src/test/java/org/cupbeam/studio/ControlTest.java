package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.DrillJson;
import org.cupbeam.lane.Lane;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.web.Visit;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A lane whose sensors see nothing, run from two phones through a host. */
@Timeout(60)
class ControlTest {
    private static EmbeddedBroker broker;
    private static int lanes;

    @TempDir
    private Path folder;
    private Host host;
    private Lane lane;
    private EventStreamReader board;
    private Visit kim;
    private Visit lou;
    private JsonNode latest;
    private String name;
    private int asked;

    @BeforeAll
    static void startBroker() throws Exception {
        broker = new EmbeddedBroker(0);
    }

    @AfterAll
    static void stopBroker() {
        broker.close();
    }

    @BeforeEach
    void start() throws Exception {
        name = "lane-" + ++lanes;
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set("739205");
        host = Host.start(Database.file(folder.resolve("studio.db")), broker.uri(), "host", new Door("127.0.0.1", 0, pin));
        lane = SilentLane.start(name, folder, broker.uri());
        board = new EventStreamReader(host.port(), "/live/home/" + name);
        score("");
        kim = new Visit(host.port()).signIn("739205", "Kim");
        lou = new Visit(host.port()).signIn("739205", "Lou");
    }

    @AfterEach
    void stop() throws Exception {
        board.close();
        lane.close();
        host.close();
    }

    @Test
    void aDuelIsStartedCorrectedAndStopped() throws Exception {
        String started = done(kim, Map.of("command", "start", "drill", drill("ladder"), "players", List.of("Ada", "Bo"),
                "tags", Map.of("slope", "uphill")));
        String missed = done(kim, Map.of("command", "miss", "finish_mm", 350, "expect", started));
        String passed = done(lou, Map.of("command", "pass", "expect", missed));
        assertThat(score(passed).at("/players/1/player").asText()).isEqualTo("Bo");
        assertThat(score(passed).get("turn").asInt()).isEqualTo(1);

        String taken = done(lou, Map.of("command", "take-back", "expect", passed));
        assertThat(score(taken).get("turn").asInt()).as("as before the miss").isZero();
        String again = done(kim, Map.of("command", "miss", "expect", taken));
        done(kim, Map.of("command", "void", "of", score(again).at("/last/sequence").asText()));
        String ended = done(kim, Map.of("command", "end"));
        assertThat(score(ended).get("state").asText()).isEqualTo("over");
        assertThat(Visit.json(kim.get("/api/names")).get("names")).extracting(JsonNode::asText).contains("Ada", "Bo");
        assertPuttsSoon("corrected", List.of("voided", "taken-back"));
        assertPuttsSoon("corrected_by", List.of("Kim", "Lou"));
    }

    @Test
    void ofTwoPhonesThatSawTheSameScoreOneIsRefused() throws Exception {
        String seen = done(kim, Map.of("command", "start", "drill", drill("ladder"), "players", List.of("Ada", "Bo"), "tags", Map.of()));
        int attempts = 0;
        for (int round = 1; round <= 10; round++) {
            String expect = seen;
            CompletableFuture<HttpResponse<String>> first = CompletableFuture.supplyAsync(() -> miss(kim, expect));
            CompletableFuture<HttpResponse<String>> second = CompletableFuture.supplyAsync(() -> miss(lou, expect));
            List<HttpResponse<String>> answers = List.of(first.get(), second.get());
            assertThat(answers).extracting(HttpResponse::statusCode).containsExactlyInAnyOrder(200, 409);
            HttpResponse<String> refused = answers.get(answers.get(0).statusCode() == 409 ? 0 : 1);
            assertThat(Visit.json(refused).get("error").asText()).startsWith("The lane has moved on since");
            seen = Visit.json(answers.get(answers.get(0).statusCode() == 200 ? 0 : 1)).get("sequence").asText();
            attempts++;
        }
        JsonNode score = score(seen);
        assertThat(score.at("/players/0/attempts").asInt() + score.at("/players/1/attempts").asInt()).isEqualTo(attempts);
    }

    @Test
    void theSameCommandAskedAgainIsDoneOnce() throws Exception {
        done(kim, Map.of("command", "start", "drill", drill("ladder"), "players", List.of("Ada"), "tags", Map.of()));
        String once = done(kim, Map.of("command", "miss", "id", "a-shaky-thumb"));
        String again = done(kim, Map.of("command", "miss", "id", "a-shaky-thumb"));

        assertThat(again).isEqualTo(once);
        assertThat(score(once).at("/players/0/attempts").asInt()).isEqualTo(1);
    }

    @Test
    void whatCannotBeDoneIsRefusedInWords() throws Exception {
        assertThat(refused(Map.of("command", "pass"))).isEqualTo("No drill is on: start one.");
        assertThat(refused(Map.of("command", "take-back"))).isEqualTo("There is no attempt to take back.");
        assertThat(refused(Map.of("command", "void", "of", "0000000000000042"))).startsWith("Nothing was putted under the number 42");
    }

    private HttpResponse<String> miss(Visit who, String expect) {
        try {
            return ask(who, Map.of("command", "miss", "expect", expect));
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    private String done(Visit who, Map<String, Object> command) throws Exception {
        HttpResponse<String> answer = ask(who, command);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return Visit.json(answer).get("sequence").asText();
    }

    private String refused(Map<String, Object> command) throws Exception {
        HttpResponse<String> answer = ask(kim, command);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(409);
        return Visit.json(answer).get("error").asText();
    }

    private HttpResponse<String> ask(Visit who, Map<String, Object> command) throws Exception {
        Map<String, Object> body = new HashMap<>(command);
        synchronized (this) {
            body.putIfAbsent("id", "command-" + ++asked);
        }
        return who.send("POST", "/api/lanes/home/" + name + "/commands", body);
    }

    /** The score that includes this event, as boards have it. */
    private JsonNode score(String sequence) throws Exception {
        while (latest == null || latest.get("sequence").asText().compareTo(sequence) < 0) {
            latest = new ObjectMapper().readTree(board.await("score").data());
        }
        return latest;
    }

    /** What is on record, newest first, once the host has kept it. */
    private void assertPuttsSoon(String key, List<String> values) throws Exception {
        List<String> last = List.of();
        for (int tries = 0; tries < 100 && !last.equals(values); tries++) {
            TimeUnit.MILLISECONDS.sleep(50);
            last = new ArrayList<>();
            for (JsonNode putt : Visit.json(kim.get("/api/lanes/home/" + name + "/putts")).get("putts")) {
                last.add(putt.get(key).asText());
            }
        }
        assertThat(last).isEqualTo(values);
    }

    private static JsonNode drill(String preset) throws Exception {
        return new ObjectMapper().readTree(DrillJson.text(DrillFile.preset(preset)));
    }
}
