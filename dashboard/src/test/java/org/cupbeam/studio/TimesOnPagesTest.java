package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.Event;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Times on the pages of a studio in Berlin, over the nights in which its clocks are changed. Open on Sundays, day and night. */
class TimesOnPagesTest {
    private static final long HOUR_MS = 3_600_000;
    private static final int SUNDAY = 6 * 24;
    @TempDir
    Path folder;
    private Pages pages;
    private int runs;

    @BeforeEach
    void open() throws IOException {
        pages = new Pages(folder);
        pages.done("PUT", "/api/usage/hours", "{\"zone\": \"Europe/Berlin\", \"hours\": \"sun 00:00-24:00\"}");
    }

    @AfterEach
    void close() {
        pages.close();
    }

    @Test
    void theDayOf25HoursHasThemAndTheHourThatComesTwiceHasThePlayOfBoth() {
        plays("2026-10-25T00:58:00Z");
        JsonNode month = pages.get("/api/usage?month=2026-10");

        assertThat(month.at("/days/24/day").asText()).isEqualTo("2026-10-25");
        assertThat(month.at("/days/24/figures/open_ms").asLong()).isEqualTo(25 * HOUR_MS);
        assertThat(month.at("/days/24/figures/play_ms").asLong()).isEqualTo(240_000);
        assertThat(hour(month, 2).get("open_ms").asLong()).as("4 Sundays, and once more").isEqualTo(5 * HOUR_MS);
        assertThat(hour(month, 2).get("play_ms").asLong()).isEqualTo(240_000);
        assertThat(hour(month, 1).get("play_ms").asLong() + hour(month, 3).get("play_ms").asLong()).isZero();
    }

    @Test
    void theDayOf23HoursHasNoHourThatDidNotComeAndPlayGoesOnInTheNext() {
        plays("2026-03-29T00:58:00Z");
        JsonNode month = pages.get("/api/usage?month=2026-03");

        assertThat(month.at("/days/28/day").asText()).isEqualTo("2026-03-29");
        assertThat(month.at("/days/28/figures/open_ms").asLong()).isEqualTo(23 * HOUR_MS);
        assertThat(hour(month, 2).get("open_ms").asLong()).as("5 Sundays, less one").isEqualTo(4 * HOUR_MS);
        assertThat(hour(month, 2).get("play_ms").asLong()).isZero();
        assertThat(hour(month, 1).get("play_ms").asLong()).isEqualTo(120_000);
        assertThat(hour(month, 3).get("play_ms").asLong()).isEqualTo(120_000);
    }

    @Test
    void aRunOverTheChangeIsOneRunOfFourMinutesOnOneDay() {
        plays("2026-10-25T00:58:00Z");
        JsonNode run = pages.get("/api/run/1");
        JsonNode report = pages.get("/api/report/1");

        assertThat(run.get("zone").asText()).isEqualTo("Europe/Berlin");
        assertThat(run.at("/run/started_ms").asLong()).isEqualTo(Instant.parse("2026-10-25T00:58:00Z").toEpochMilli());
        assertThat(run.at("/putts/3/at_ms").asLong() - run.at("/putts/0/at_ms").asLong()).isEqualTo(240_000);
        assertThat(report.get("day").asText()).isEqualTo("2026-10-25");
        assertThat(report.get("days")).hasSize(1);
        assertThat(report.get("runs")).hasSize(1);
        assertThat(ids(report.get("putts"))).hasSize(4).isSorted();
    }

    @Test
    void aDayInTheLogbookLastsFromMidnightToMidnightOfTheStudiosClock() {
        plays("2026-10-24T21:30:00Z"); // 23:30 of the day before, in summer time
        plays("2026-10-24T22:30:00Z");
        plays("2026-10-25T22:30:00Z");
        plays("2026-10-25T23:30:00Z"); // 00:30 of the day after, in winter time

        assertThat(ids(pages.get("/api/runs?from=2026-10-25&to=2026-10-25").get("rows"))).containsExactly(3, 2);
        assertThat(ids(pages.get("/api/report/1?day=2026-10-25").get("runs"))).containsExactly(3, 2);
    }

    @Test
    void aRunOf1970MovesToItsDayWhenTheClockIsSet() {
        ScriptedLane lane = new ScriptedLane("one", "j1").boots("no-battery", Instant.EPOCH);
        keep(run(lane, "r1"));
        assertThat(pages.get("/api/report/1").get("day").asText()).isEqualTo("1970-01-01");

        pages.keep(lane.setsClock(Instant.parse("2026-10-25T01:02:00Z")));
        JsonNode report = pages.get("/api/report/1");
        assertThat(report.get("day").asText()).isEqualTo("2026-10-25");
        assertThat(report.at("/runs/0/started_ms").asLong()).isEqualTo(Instant.parse("2026-10-25T00:58:00Z").toEpochMilli());
        assertThat(hour(pages.get("/api/usage?month=2026-10"), 2).get("play_ms").asLong()).isEqualTo(240_000);
        assertThat(pages.get("/api/usage?month=1970-01").at("/all/putts").asInt()).isZero();
    }

    /** The clock is believed, and is set back an hour in the middle: the putts stay in their order on every page. */
    @Test
    void aClockThatIsSetBackInARunTurnsNoPuttsRound() {
        ScriptedLane lane = new ScriptedLane("one", "j1");
        keep(List.of(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.passes(60).misses("r1", null, "Ada", 2, 300),
                lane.setsClock(lane.wall().minusSeconds(3_600)), lane.passes(60).holes("r1", null, "Ada", 2),
                lane.passes(60).misses("r1", null, "Ada", 3, 300), lane.ends("r1", null, "Ada", 2, 4, 2, 300)));

        assertThat(ids(pages.get("/api/run/1").get("putts"))).hasSize(4).isSorted();
        assertThat(ids(pages.get("/api/report/1").get("putts"))).hasSize(4).isSorted();
    }

    private void plays(String from) {
        ScriptedLane lane = new ScriptedLane("one", "j" + ++runs).boots("boot-" + runs, Instant.EPOCH);
        pages.keep(lane.setsClock(Instant.parse(from)));
        keep(run(lane, "r" + runs));
    }

    /** Four putts within four minutes. */
    private static List<Event> run(ScriptedLane lane, String run) {
        return List.of(lane.starts(run, null, "Ada", 1), lane.holes(run, null, "Ada", 1),
                lane.passes(80).misses(run, null, "Ada", 2, 300), lane.passes(80).holes(run, null, "Ada", 2),
                lane.passes(80).misses(run, null, "Ada", 3, 1_200), lane.ends(run, null, "Ada", 2, 4, 2, 750));
    }

    private void keep(List<Event> events) {
        pages.keep(events.toArray(Event[]::new));
    }

    private static JsonNode hour(JsonNode month, int hour) {
        return month.get("heat").get(SUNDAY + hour).get("figures");
    }

    private static List<Integer> ids(JsonNode rows) {
        List<Integer> ids = new ArrayList<>();
        rows.forEach(row -> ids.add(row.get("id").asInt()));
        return ids;
    }
}
