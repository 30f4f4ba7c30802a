package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.Event;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An evening's record: a duel of Ada and somebody with a hostile name, and a putt outside any run. */
class LogbookRoutesTest {
    private static final String HOSTILE = "<img src=x onerror=alert(1)>";

    @TempDir
    Path folder;
    private Pages pages;
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    @BeforeEach
    void open() throws IOException {
        pages = new Pages(folder);
        pages.keep(lane.starts("r1", "d1", "Ada", 1), lane.starts("r2", "d1", HOSTILE, 2),
                lane.passes(10).holes("r1", "d1", "Ada", 1), lane.passes(10).misses("r1", "d1", "Ada", 2, 417),
                lane.passes(10).misses("r2", "d1", HOSTILE, 1, 1_200), lane.takesBack(5),
                lane.passes(10).holes("r2", "d1", HOSTILE, 1), lane.puttsOutsideAnyRun(),
                lane.ends("r1", "d1", "Ada", 1, 2, 1, 417), lane.ends("r2", "d1", HOSTILE, 1, 1, 1, Double.NaN),
                lane.endsDuel("d1", HOSTILE));
    }

    @AfterEach
    void close() {
        pages.close();
    }

    @Test
    void playersAreListedByWhoWasHereLastAndFoundByName() {
        assertThat(names(pages.get("/api/players"))).containsExactlyInAnyOrder("Ada", HOSTILE);
        assertThat(names(pages.get("/api/players?by=name"))).containsExactly(HOSTILE, "Ada");
        assertThat(names(pages.get("/api/players?name=%20aDa"))).containsExactly("Ada");
        assertThat(names(pages.get("/api/players?name=%25"))).as("no wildcard").isEmpty();
    }

    @Test
    void howManyPlayersThereAreIsToldWhateverAPageHolds() {
        pages.enrol("Guest", 60);
        for (String all : List.of("/api/players", "/api/players?by=name")) {
            assertThat(pages.get(all).get("total").asInt()).as(all).isEqualTo(62);
        }
        assertThat(pages.get("/api/players").get("rows")).as("who played").hasSize(2);
        JsonNode guests = pages.get("/api/players?name=gUest");
        assertThat(guests.get("rows")).hasSize(50);
        assertThat(guests.get("total").asInt()).isEqualTo(60);
        JsonNode rest = pages.get("/api/players?name=gUest&after=" + guests.get("next").asText());
        assertThat(rest.get("rows")).hasSize(10);
        assertThat(rest.get("total").asInt()).as("on every page").isEqualTo(60);
        assertThat(pages.get("/api/players?name=%25").get("total").asInt()).as("no wildcard").isZero();

        pages.done("DELETE", "/api/player/" + id("Ada"), null);
        assertThat(pages.get("/api/players").get("total").asInt()).as("without the forgotten").isEqualTo(61);
    }

    @Test
    void twoHundredPlayersCanBeChosenFromAndMoreAreLookedForByName() {
        pages.enrol("Guest", 198);
        JsonNode all = pages.get("/api/runs/choices");
        assertThat(all.get("players")).hasSize(200);
        assertThat(all.get("more").asBoolean()).isFalse();

        pages.enrol("Zoe", 1);
        JsonNode some = pages.get("/api/runs/choices");
        assertThat(some.get("players")).hasSize(200).noneMatch(each -> each.get("name").asText().startsWith("Zoe"));
        assertThat(some.get("more").asBoolean()).isTrue();
        JsonNode found = pages.get("/api/runs/choices?name=%20zOE");
        assertThat(found.get("players")).singleElement()
                .satisfies(each -> assertThat(each.get("name").asText()).isEqualTo("Zoe 001"));
        assertThat(found.get("more").asBoolean()).isFalse();
        assertThat(found.get("drills")).as("the rest is not looked through").hasSameSizeAs(all.get("drills")).isNotEmpty();
        assertThat(pages.get("/api/runs/choices?name=%25").get("players")).as("no wildcard").isEmpty();
        assertThat(pages.ask("GET", "/api/runs/choices?name=" + "n".repeat(101), null).statusCode()).isEqualTo(400);
    }

    @Test
    void runsAreFilteredByPlayerDrillTagsLaneAndDays() {
        assertThat(pages.get("/api/runs").get("rows")).hasSize(2);
        for (String some : List.of("player=" + id("Ada"), "player=" + id("Ada") + "&drill=Ladder&breaks=left-to-right&slope=uphill"
                + "&lane=1&from=2026-11-25&to=2026-11-25")) {
            assertThat(pages.get("/api/runs?" + some).get("rows")).as(some).singleElement()
                    .satisfies(run -> assertThat(run.at("/player/name").asText()).isEqualTo("Ada"));
        }
        for (String none : List.of("drill=Lag", "breaks=straight", "slope=level", "lane=2", "from=2026-11-26",
                "to=2026-11-24", "drill=%27%20OR%201%3D1%20--")) {
            assertThat(pages.get("/api/runs?" + none).get("rows")).as(none).isEmpty();
        }
    }

    @Test
    void whatMakesNoSenseIsRefusedInWords() {
        for (String bad : List.of("player=x", "breaks=around", "slope=up", "from=yesterday", "after=1_2_3", "after=x",
                "drill=" + "d".repeat(101), "to=+999999999-01-01")) {
            HttpResponse<byte[]> answer = pages.ask("GET", "/api/runs?" + bad, null);
            assertThat(answer.statusCode()).as(bad).isEqualTo(400);
            assertThat(Pages.json(answer).get("error").asText()).isNotBlank();
        }
        for (String none : List.of("/api/run/999", "/api/run/x", "/api/player/999", "/api/run/99999999999",
                "/api/report/999", "/api/player/999/export?as=json")) {
            assertThat(pages.ask("GET", none, null).statusCode()).as(none).isEqualTo(404);
        }
    }

    @Test
    void aListGoesOnWhereItsPageEnded() {
        JsonNode first = pages.get("/api/runs?limit=1");
        JsonNode second = pages.get("/api/runs?limit=1&after=" + first.get("next").asText());

        assertThat(first.get("rows")).hasSize(1);
        assertThat(second.at("/rows/0/id").asInt()).isNotEqualTo(first.at("/rows/0/id").asInt());
        assertThat(second.get("next").isNull()).isTrue();
    }

    @Test
    void aRunIsToldPuttByPuttWithWhatWasTakenBackAndByWhom() {
        JsonNode run = pages.get("/api/run/" + run(HOSTILE));

        assertThat(run.get("putts")).hasSize(2);
        assertThat(run.at("/putts/0/attempt/finish_mm").asDouble()).isEqualTo(1_200);
        assertThat(run.at("/putts/0/attempt/overshoot").asBoolean()).isTrue();
        assertThat(run.at("/putts/0/counts").asBoolean()).isFalse();
        assertThat(run.at("/putts/0/trail/0/what").asText()).isEqualTo("taken-back");
        assertThat(run.at("/putts/0/trail/0/by").asText()).isEqualTo("pedal");
        assertThat(run.at("/putts/1/attempt/outcome").asText()).isEqualTo("holed");
        assertThat(run.at("/run/won").asBoolean()).isTrue();
        assertThat(run.get("duel")).hasSize(2);
    }

    @Test
    void notesStandOnPlayersRunsAndPuttsUntilTheyAreWithdrawn() {
        int run = run("Ada");
        int putt = pages.get("/api/run/" + run).at("/putts/1/id").asInt();
        pages.done("POST", "/api/run/" + run + "/notes", "{\"words\": \"" + HOSTILE + "\"}");
        pages.done("POST", "/api/attempt/" + putt + "/notes", "{\"words\": \"eyes up\\ntoo early\"}");
        pages.done("POST", "/api/player/" + id("Ada") + "/notes", "{\"words\": \"left eye leads\"}");

        JsonNode told = pages.get("/api/run/" + run);
        assertThat(told.at("/notes/0/words").asText()).isEqualTo(HOSTILE);
        assertThat(told.at("/notes/0/author").asText()).isEqualTo("staff");
        assertThat(told.at("/putts/1/notes/0/words").asText()).isEqualTo("eyes up\ntoo early");
        assertThat(pages.get("/api/player/" + id("Ada")).get("notes")).hasSize(3);

        pages.done("DELETE", "/api/note/" + told.at("/notes/0/id").asInt(), null);
        assertThat(pages.get("/api/run/" + run).get("notes")).isEmpty();
        assertThat(pages.ask("POST", "/api/run/" + run + "/notes", "{\"words\": \" \"}").statusCode()).isEqualTo(400);
        assertThat(pages.ask("POST", "/api/run/999/notes", "{\"words\": \"x\"}").statusCode()).isEqualTo(404);
    }

    @Test
    void aPuttThatIsSetNotToCountKeepsWhatItWasAndWhoSaidSo() {
        int run = run("Ada");
        int putt = pages.get("/api/run/" + run).at("/putts/1/id").asInt();
        pages.done("POST", "/api/attempt/" + putt + "/void", "{\"reason\": \"a dog ran by\"}");

        JsonNode after = pages.get("/api/run/" + run).at("/putts/1");
        assertThat(after.get("counts").asBoolean()).isFalse();
        assertThat(after.at("/attempt/finish_mm").asDouble()).isEqualTo(417);
        assertThat(after.at("/trail/0/what").asText()).isEqualTo("voided");
        assertThat(after.at("/trail/0/reason").asText()).isEqualTo("a dog ran by");
        assertThat(after.at("/trail/0/by").asText()).isEqualTo("staff");
        assertThat(after.at("/trail/0/at_ms").asLong()).isEqualTo(Pages.NOW.millis());

        pages.done("POST", "/api/attempt/" + putt + "/restore", "{}");
        assertThat(pages.get("/api/run/" + run).at("/putts/1/counts").asBoolean()).isTrue();
        assertThat(pages.get("/api/run/" + run).at("/putts/1/trail")).hasSize(2);
        HttpResponse<byte[]> again = pages.ask("POST", "/api/attempt/" + putt + "/restore", "{}");
        assertThat(again.statusCode()).isEqualTo(400);
        assertThat(Pages.json(again).get("error").asText()).isEqualTo("The attempt counts already.");
    }

    @Test
    void aRunThatSomebodyElsePlayedIsTheirsAndSaysWhoseItWas() {
        int run = run("Ada");
        assertThat(pages.ask("POST", "/api/run/" + run + "/reassign", "{\"player\": \"Nobody\"}").statusCode())
                .isEqualTo(409);
        pages.done("POST", "/api/players", "{\"name\": \"Bo\"}");
        pages.done("POST", "/api/run/" + run + "/reassign", "{\"player\": \"bo\", \"reason\": \"wrong name chosen\"}");

        JsonNode told = pages.get("/api/run/" + run);
        assertThat(told.at("/run/player/name").asText()).isEqualTo("Bo");
        assertThat(told.at("/trail/0/was").asText()).isEqualTo("Ada");
        assertThat(told.at("/trail/0/became").asText()).isEqualTo("Bo");
    }

    @Test
    void aPlayerIsDescribedRenamedAndMerged() {
        int ada = id("Ada");
        pages.done("PUT", "/api/player/" + ada,
                "{\"name\": \"Ada L.\", \"hand\": \"left\", \"units\": \"feet\", \"remark\": \"Tuesdays\"}");
        JsonNode told = pages.get("/api/player/" + ada);
        assertThat(told.at("/player/name").asText()).isEqualTo("Ada L.");
        assertThat(told.at("/player/hand").asText()).isEqualTo("left");
        assertThat(told.at("/trail/0/was").asText()).isEqualTo("Ada");

        assertThat(pages.ask("PUT", "/api/player/" + ada, "{\"name\": \"Ada L.\", \"hand\": \"both\"}").statusCode())
                .isEqualTo(400);
        pages.done("POST", "/api/player/" + ada + "/merge", "{\"into\": " + id(HOSTILE) + "}");
        assertThat(names(pages.get("/api/players?by=name"))).containsExactly(HOSTILE);
        assertThat(pages.get("/api/player/" + ada).at("/player/merged_into").asInt()).isEqualTo(id(HOSTILE));
    }

    @Test
    void aPlayerWhoAsksIsForgottenAndTheCountsStay() {
        int ada = id("Ada");
        pages.done("POST", "/api/player/" + ada + "/notes", "{\"words\": \"grips low\"}");
        JsonNode held = Pages.json(pages.ask("GET", "/api/player/" + ada + "/export?as=json", null));
        assertThat(held.at("/players/0/name").asText()).isEqualTo("Ada");
        assertThat(held.get("runs")).hasSize(1);
        assertThat(held.get("attempts")).hasSize(2);
        assertThat(held.at("/notes/0/words").asText()).isEqualTo("grips low");

        pages.done("DELETE", "/api/player/" + ada, null);
        assertThat(names(pages.get("/api/players?by=name"))).containsExactly(HOSTILE);
        assertThat(pages.get("/api/player/" + ada).at("/player/name").isNull()).isTrue();
        assertThat(pages.get("/api/runs?player=" + ada).get("rows")).hasSize(1);
        assertThat(pages.get("/api/usage").at("/all/putts").asInt()).isEqualTo(4);
        assertThat(Pages.text(pages.ask("GET", "/api/record/export?as=json", null))).doesNotContain("Ada");
    }

    @Test
    void aSessionsReportHoldsItsRunsPuttsAndNotesAndWhatWasUsualBefore() throws IOException {
        ScriptedLane earlier = new ScriptedLane("one", "j0").passes(-10 * 86_400L);
        List<Event> before = new ArrayList<>(List.of(earlier.starts("r0", null, "Ada", 1)));
        before.add(earlier.passes(10).holes("r0", null, "Ada", 1));
        before.add(earlier.passes(10).misses("r0", null, "Ada", 1, 300));
        pages.keep(before.toArray(Event[]::new));
        pages.done("POST", "/api/player/" + id("Ada") + "/notes", "{\"words\": \"steady tempo\"}");

        JsonNode report = pages.get("/api/report/" + id("Ada"));
        assertThat(report.get("day").asText()).isEqualTo("2026-11-25");
        assertThat(report.get("days")).extracting(JsonNode::asText).containsExactly("2026-11-25", "2026-11-15");
        assertThat(report.get("runs")).hasSize(1);
        assertThat(report.get("putts")).hasSize(2);
        assertThat(report.at("/notes/0/words").asText()).isEqualTo("steady tempo");
        assertThat(report.at("/usual/0/putts").asInt()).isEqualTo(2);
        assertThat(report.at("/usual/0/holed").asInt()).isEqualTo(1);
        assertThat(pages.get("/api/report/" + id("Ada") + "?day=2026-11-15").get("putts")).hasSize(2);
    }

    private List<String> names(JsonNode page) {
        List<String> names = new ArrayList<>();
        page.get("rows").forEach(row -> names.add(row.get("name").asText()));
        return names;
    }

    private int id(String name) {
        for (JsonNode row : pages.get("/api/players?by=name").get("rows")) {
            if (row.get("name").asText().equals(name)) {
                return row.get("id").asInt();
            }
        }
        throw new AssertionError("no player " + name);
    }

    private int run(String player) {
        return pages.get("/api/runs?player=" + id(player)).at("/rows/0/id").asInt();
    }
}
