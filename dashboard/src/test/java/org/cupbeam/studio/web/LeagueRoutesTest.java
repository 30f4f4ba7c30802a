package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two studios in a league that began on Monday the 16th; it is Wednesday the 25th. */
class LeagueRoutesTest {
    private static final long DAY_S = 86_400;

    @TempDir
    Path folder;
    private Pages pages;
    private final ScriptedLane home = new ScriptedLane("home", "one", "j1");
    private final ScriptedLane mill = new ScriptedLane("mill", "two", "j2");
    private int runs;

    @BeforeEach
    void open() throws IOException {
        pages = new Pages(folder);
        mill.passes(-6 * DAY_S);
        home.passes(-5 * DAY_S);
        play(home, "Ada", 3, 20);
        play(mill, "Bo", 4, 20);
    }

    @AfterEach
    void close() {
        pages.close();
    }

    @Test
    void isOpenedForWholeWeeksByTheStudiosClock() {
        JsonNode league = open("2026-11-18", "2026-12-01", "[]");

        assertThat(league.get("weeks")).extracting(each -> each.get("name").asText() + " " + each.get("from").asText() + " "
                + each.get("to").asText()).containsExactly("2026-W47 2026-11-16 2026-11-22", "2026-W48 2026-11-23 2026-11-29",
                "2026-W49 2026-11-30 2026-12-06");
        assertThat(league.get("zone").asText()).isEqualTo("Europe/Berlin");
        assertThat(league.get("now").asInt()).isEqualTo(2);
        assertThat(pages.get("/api/leagues").at("/leagues/0/name").asText()).isEqualTo("Autumn");
        assertThat(pages.get("/api/leagues/choices").get("studios")).extracting(JsonNode::asText).containsExactly("home", "mill");
    }

    @Test
    void showsOneTableOverAllStudiosAndTheWeekThatWasAskedFor() {
        open("2026-11-18", "2026-12-01", "[]");
        home.passes(5 * DAY_S);
        play(home, "Ada", 2, 9);

        JsonNode league = pages.get("/api/league/1?week=2026-W47");

        assertThat(league.get("rows")).extracting(each -> each.get("place").asInt() + " " + each.get("name").asText() + " "
                + each.at("/figures/cleared").asInt() + " " + each.get("weeks")).containsExactly("1 Ada 5 [3,2]", "2 Bo 4 [4,null]");
        assertThat(league.at("/week/rows")).extracting(each -> each.get("name").asText() + " " + each.get("studios") + " "
                + each.at("/played/0/lane").asText()).containsExactly("Bo [\"mill\"] two", "Ada [\"home\"] one");
        assertThat(pages.get("/api/league/1").at("/week/rows")).as("this week").hasSize(1);
        assertThat(pages.get("/api/league/1").at("/week/heard").isNull()).as("it goes on").isTrue();
    }

    @Test
    void saysWhichStudiosAWeekThatIsOverHasYetToHear() {
        open("2026-11-18", "2026-12-01", "[]");
        assertThat(behind()).containsExactly("home", "mill");

        home.passes(5 * DAY_S);
        play(home, "Ada", 2, 9);
        assertThat(behind()).as("something came from home that happened later").containsExactly("mill");
        assertThat(pages.get("/api/league/1?week=2026-W47").at("/week/heard/studios").asInt()).isEqualTo(2);

        health("2026-11-22T22:59:00Z", 0, Stamp.Clock.SYNCHRONISED);
        assertThat(behind()).as("before Sunday's end").containsExactly("mill");
        health("2026-11-24T10:00:00Z", 3, Stamp.Clock.SYNCHRONISED);
        assertThat(behind()).as("some putts wait there").containsExactly("mill");
        health("2026-11-24T10:00:00Z", 0, Stamp.Clock.UNSYNCHRONISED);
        assertThat(behind()).as("by no clock of its own").containsExactly("mill");
        health("2026-11-24T10:00:00Z", 0, Stamp.Clock.SYNCHRONISED);
        assertThat(behind()).isEmpty();
    }

    @Test
    void whatComesLateCountsForItsWeek() {
        open("2026-11-18", "2026-12-01", "[]");
        play(mill, "Cy", 6, 22);

        assertThat(pages.get("/api/league/1?week=2026-W47").at("/week/rows/0/name").asText()).isEqualTo("Cy");
    }

    @Test
    void isChangedAndTakenOffAndPutBackByWhoeverKnowsItAsItIs() {
        open("2026-11-18", "2026-12-01", "[]");

        assertThat(pages.done("PUT", "/api/league/1", "{\"version\": 1, \"name\": \"Late\", \"last\": \"2026-11-29\"}").get("weeks")).hasSize(2);
        assertThat(pages.ask("PUT", "/api/league/1", "{\"version\": 1, \"name\": \"Mine\", \"last\": \"2026-11-29\"}").statusCode())
                .isEqualTo(409);
        assertThat(pages.ask("DELETE", "/api/league/1", null).statusCode()).isEqualTo(204);
        assertThat(pages.ask("GET", "/api/league/1", null).statusCode()).isEqualTo(404);
        assertThat(pages.done("POST", "/api/league/1/put-back", null).get("name").asText()).isEqualTo("Late");
        assertThat(pages.ask("POST", "/api/league/1/put-back", null).statusCode()).isEqualTo(409);
    }

    @Test
    void whatMakesNoSenseIsRefusedInWordsAndOpensNothing() {
        refused("2026-11-18", "2026-11-10", "[]", "weeks: are 0; give a last week that makes it 1 to 26");
        refused("2026-11-18", "2027-11-10", "[]", "weeks: are 52;");
        refused("soon", "2026-11-10", "[]", "first: give a day as 2026-11-25.");
        refused("2026-11-18", "2026-11-19", "[\"nowhere\"]", "studio: nowhere has not been heard here");
        refused("2026-11-18", "2026-11-19", "[null]", "Choose all studios");
        assertThat(pages.ask("POST", "/api/leagues", "{\"name\": \"x\", \"first\": \"2026-11-18\", \"last\": \"2026-11-18\"}").statusCode())
                .isEqualTo(400);
        assertThat(pages.get("/api/leagues").get("leagues")).isEmpty();
        open("2026-11-18", "2026-12-01", "[\"mill\"]");
        assertThat(pages.ask("GET", "/api/league/1?week=2026-W01", null).statusCode()).isEqualTo(400);
    }

    @Test
    void isExportedAsOneJsonFileOrATableAsCsv() {
        open("2026-11-18", "2026-12-01", "[]");

        HttpResponse<byte[]> json = pages.ask("GET", "/api/league/1/export?as=json", null);
        assertThat(json.headers().firstValue("Content-Disposition")).hasValue("attachment; filename=\"league-1-autumn.json\"");
        assertThat(Pages.json(json).get("table")).hasSize(2);
        assertThat(Pages.json(json).get("runs")).hasSize(2);
        assertThat(Pages.text(pages.ask("GET", "/api/league/1/export?as=csv&sheet=weeks", null))).isEqualTo(
                "week,place,player,player_number,studios,runs,stations_cleared,attempts,holed,mean_miss_mm\r\n"
                + "2026-W47,1,Bo,2,mill,1,4,20,4,300\r\n2026-W47,2,Ada,1,home,1,3,20,3,300\r\n");
    }

    private List<String> behind() {
        List<String> behind = new ArrayList<>();
        pages.get("/api/league/1?week=2026-W47").at("/week/heard/behind").forEach(each -> behind.add(each.get("studio").asText()));
        return behind;
    }

    private void health(String time, long outbox, Stamp.Clock clock) {
        pages.lanes.health(new Topics("mill", "two"), new Health(Health.State.ONLINE, 1, "boot-1", new Health.Report("j2", "0.1.0",
                Instant.parse(time), clock, outbox, 0, List.of(), List.of())));
    }

    private void refused(String first, String last, String studios, String words) {
        HttpResponse<byte[]> answer = pages.ask("POST", "/api/leagues", body(first, last, studios));
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(Pages.json(answer).get("error").asText()).contains(words);
    }

    private JsonNode open(String first, String last, String studios) {
        return pages.done("POST", "/api/leagues", body(first, last, studios));
    }

    private static String body(String first, String last, String studios) {
        return "{\"name\": \"Autumn\", \"drill\": %s, \"first\": \"%s\", \"last\": \"%s\", \"runs\": 1, \"studios\": %s}"
                .formatted(DrillJson.text(ScriptedLane.LADDER), first, last, studios);
    }

    private void play(ScriptedLane lane, String player, int cleared, int attempts) {
        String run = "r" + ++runs;
        pages.keep(lane.starts(run, null, player, 1), lane.holes(run, null, player, 1), lane.passes(60).ends(run, null, player, cleared,
                attempts, cleared, 300));
    }
}
