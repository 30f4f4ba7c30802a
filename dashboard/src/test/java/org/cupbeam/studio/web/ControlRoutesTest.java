package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Function;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Scenes;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Commands to a lane, over HTTP; the lane says whatever a test has it say. */
class ControlRoutesTest {
    private static final Topics LANE = new Topics("home", "lane-1");
    private static final String COMMANDS = "/api/lanes/home/lane-1/commands";
    private static final String SEEN = "0000000000000007";

    @TempDir
    private Path folder;
    private final LiveLanes lanes = new LiveLanes("test");
    private final BlockingQueue<Command> heard = new LinkedBlockingQueue<>();
    private Store store;
    private WebServer web;
    private Visit visit;

    @BeforeEach
    void start() throws Exception {
        store = Store.open(Database.file(folder.resolve("studio.db")));
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set("739205");
        web = new WebServer(store, lanes, pin).start("127.0.0.1", 0);
        visit = new Visit(web.port()).signIn("739205", "Kim");
        lanes.health(LANE, Scenes.online(1, "j1"));
        laneSays(command -> new Answer(command.id(), true, null, 8));
    }

    @AfterEach
    void stop() {
        web.close();
        store.close();
    }

    @Test
    void aCommandGoesOutUnderTheNameOfWhoeverSignedIn() throws Exception {
        HttpResponse<String> answer = command("take-back", Map.of("expect", SEEN, "by", "somebody else"));

        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(Visit.json(answer).get("sequence").asText()).isEqualTo("0000000000000008");
        Command sent = heard.take();
        assertThat(sent.by()).isEqualTo("Kim");
        assertThat(sent.expect()).hasValue(7);
        assertThat(sent.ask()).isEqualTo(new Command.TakeBack());
    }

    @Test
    void startsADrillForPlayersWhateverTheyAreCalled() throws Exception {
        List<String> players = List.of("<img src=x onerror=alert(1)>", "Bo'; DROP TABLE player;--");
        HttpResponse<String> answer = command("start", Map.of("drill", drill(), "players", players,
                "tags", Map.of("break", "straight")));

        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(((Command.Start) heard.take().ask()).players()).isEqualTo(players);
    }

    @Test
    void saysWhyTheLaneRefused() throws Exception {
        laneSays(command -> new Answer(command.id(), false, "the lane has moved on since: look again", 9));
        HttpResponse<String> answer = command("pass", Map.of("expect", SEEN));

        assertThat(answer.statusCode()).isEqualTo(409);
        assertThat(Visit.json(answer).get("error").asText()).isEqualTo("The lane has moved on since: look again.");
    }

    @Test
    void saysThatTheLaneDidNotAnswerAndTakesTheSameCommandAgain() throws Exception {
        laneSays(command -> null);
        HttpResponse<String> silent = command("end", Map.of("id", "the-same"));
        assertThat(silent.statusCode()).isEqualTo(504);
        assertThat(Visit.json(silent).get("error").asText()).startsWith("The lane has not answered.");

        laneSays(command -> new Answer(command.id(), true, null, 8));
        assertThat(command("end", Map.of("id", "the-same")).statusCode()).isEqualTo(200);
        assertThat(heard).extracting(Command::id).containsExactly("the-same", "the-same");
    }

    @Test
    void sendsNothingToALaneThatIsNotThere() throws Exception {
        lanes.health(LANE, Scenes.lost(1));
        HttpResponse<String> answer = command("pass", Map.of());

        assertThat(answer.statusCode()).isEqualTo(409);
        assertThat(Visit.json(answer).get("error").asText()).isEqualTo("The lane has stopped answering. Nothing was sent.");
        assertThat(visit.send("POST", "/api/lanes/home/lane-2/commands", Map.of("id", "i", "command", "pass")).statusCode()).isEqualTo(404);
        assertThat(visit.send("POST", "/api/lanes/HOME/x+y/commands", Map.of("id", "i", "command", "pass")).statusCode()).isEqualTo(404);
        assertThat(heard).isEmpty();
    }

    @Test
    void saysSoWhenTheBrokerIsAway() throws Exception {
        web.sendBy((lane, command) -> false);

        assertThat(command("pass", Map.of()).statusCode()).isEqualTo(504);
    }

    @Test
    void refusesWhatNoLaneWouldUnderstand() throws Exception {
        for (Map<String, Object> nonsense : List.<Map<String, Object>>of(Map.of("command", "frob"), Map.of("expect", "7"),
                Map.of("command", "void"), Map.of("command", "start", "drill", drill(), "players", List.of()),
                Map.of("command", "start", "drill", drill(), "players", List.of("Ada", "Ada")),
                Map.of("command", "start", "drill", drill(), "players", List.of("A\u0007da")),
                Map.of("command", "start", "drill", drill(), "players", List.of("x".repeat(41))),
                Map.of("id", "x".repeat(65)))) {
            HttpResponse<String> answer = command("pass", nonsense);
            assertThat(answer.statusCode()).as(nonsense + ": " + answer.body()).isEqualTo(400);
            assertThat(Visit.json(answer).get("error").asText()).startsWith("That cannot be asked of a lane: ");
        }
        assertThat(heard).isEmpty();
    }

    @Test
    void namesTheWrongerAsTheyCalledThemselvesOnOneLineAndInForty() throws Exception {
        visit.signIn("739205", "  K\u0000i\nm" + "\uD83C\uDFCC".repeat(50));
        command("pass", Map.of());

        String by = heard.take().by();
        assertThat(by).startsWith("K i m\uD83C\uDFCC").doesNotContain("\n");
        assertThat(by.codePointCount(0, by.length())).isEqualTo(40);
    }

    @Test
    void leadsToTheOnlyLaneAndElseToTheList() throws Exception {
        HttpResponse<String> one = visit.get("/control");
        assertThat(one.headers().firstValue("Location")).hasValueSatisfying(to -> assertThat(to).endsWith("/control/home/lane-1"));
        lanes.health(new Topics("home", "lane-2"), Scenes.online(1, "j2"));

        assertThat(visit.get("/control").statusCode()).isEqualTo(200);
    }

    @Test
    void aPageOfALaneThatWasNeverHeardHasNoPutts() throws Exception {
        assertThat(visit.get("/api/lanes/home/lane-9/putts").statusCode()).isEqualTo(404);
        assertThat(Visit.json(visit.get("/api/lanes/home/lane-1/putts")).get("putts")).isEmpty();
        assertThat(Visit.json(visit.get("/api/names")).get("names")).isEmpty();
    }

    private void laneSays(Function<Command, Answer> says) {
        web.sendBy((lane, command) -> {
            heard.add(command);
            Answer answer = says.apply(command);
            if (answer != null) {
                lanes.answer(lane, answer);
            }
            return true;
        });
    }

    private HttpResponse<String> command(String what, Map<String, Object> more) throws Exception {
        Map<String, Object> body = new HashMap<>(Map.of("id", "command-1", "command", what));
        body.putAll(more);
        return visit.send("POST", COMMANDS, body);
    }

    private static Object drill() throws Exception {
        return new ObjectMapper().readTree(DrillJson.text(DrillFile.preset("ladder")));
    }
}
