package org.cupbeam.studio.sim;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.studio.web.LiveLanes;
import org.cupbeam.studio.web.Visit;
import org.cupbeam.studio.web.WebServer;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A board's clock is wrong, and nothing else is: from the lane through link, broker and host to what the pages say. */
class ClocksTest {
    private static final int EVENINGS = 6;
    private static final Instant YEARS_LATER = Instant.parse("1980-01-01T00:00:00Z");
    @TempDir
    Path folder;

    /** What was putted in 1970, by the board's clock, has its right time on the pages once the clock is set. */
    @Test
    void aBoardThatStartsIn1970HasItsTimesSetRight() throws Exception {
        int in1970 = 0;
        for (int seed = 1; seed <= EVENINGS; seed++) {
            try (Simulation evening = new Simulation(seed, folder, Simulation.Sabotage.NONE, dice -> Weather.fair())) {
                evening.lanes.forEach(lane -> lane.startsIn1970(8 * Agenda.S));
                evening.run();
                in1970 += (int) events(evening).stream().filter(each -> each.time().isBefore(YEARS_LATER)).count();
                long beganMs = LaneClock.BEGINNING.toEpochMilli();
                long overMs = LaneClock.truth(evening.agenda.nowNs()).toEpochMilli();
                for (JsonNode run : runs(evening)) {
                    assertThat(run.at("/run/started_ms").asLong()).as("seed %d", seed).isBetween(beganMs, overMs);
                    run.get("putts").forEach(putt -> assertThat(putt.get("at_ms").asLong()).isBetween(beganMs, overMs));
                    assertInOrder(run);
                }
            }
        }
        assertThat(in1970).as("events that were written in 1970").isPositive();
    }

    /** A clock that is believed, and steps: the times are its own; scores, order and numbers are not touched. */
    @ParameterizedTest
    @CsvSource({"-3600, an hour back", "86400, a day on", "-86400, a day back"})
    void aClockThatStepsUpsetsNoScoreAndNoOrder(long stepS, String name) throws Exception {
        long stepsBack = 0;
        for (int seed = 1; seed <= EVENINGS; seed++) {
            try (Simulation evening = new Simulation(seed, folder, Simulation.Sabotage.NONE, dice -> Weather.fair())) {
                evening.lanes.forEach(lane -> {
                    evening.agenda.after(5 * Agenda.S, () -> lane.clock.jumps(stepS * Agenda.S));
                    evening.agenda.after(12 * Agenda.S, () -> lane.clock.jumps(-stepS * Agenda.S));
                });
                evening.run(); // holds scores and order at lane, host and in the store to what was truly putted
                List<Event> events = events(evening);
                stepsBack += IntStream.range(1, events.size()).filter(i -> events.get(i).source().equals(events.get(i - 1).source())
                        && events.get(i).time().isBefore(events.get(i - 1).time())).count();
                runs(evening).forEach(ClocksTest::assertInOrder);
            }
        }
        assertThat(stepsBack).as("events that say that they were before the one before them").isPositive();
    }

    /** As the lanes wrote them, a lane's in order. */
    private static List<Event> events(Simulation evening) {
        List<Event> events = new ArrayList<>();
        for (String each : evening.host.store().<List<String>>read(h -> h.createQuery("SELECT envelope FROM event ORDER BY journal_id, sequence")
                .mapTo(String.class).list())) {
            try {
                events.add(EventJson.decode(each.getBytes(StandardCharsets.UTF_8)));
            } catch (BadMessage e) {
                throw new AssertionError(e);
            }
        }
        return events;
    }

    /** Each run as its page is told of it. */
    private List<JsonNode> runs(Simulation evening) throws Exception {
        Clock wall = Clock.fixed(LaneClock.truth(evening.agenda.nowNs()), ZoneId.of("Europe/Berlin"));
        List<JsonNode> runs = new ArrayList<>();
        try (WebServer web = new WebServer(evening.host.store(), new LiveLanes("test"), new StaffPin(folder.resolve("staff-pin")), wall)
                .start("127.0.0.1", 0)) {
            Visit visit = new Visit(web.port()).arrives();
            for (JsonNode row : Visit.json(visit.get("/api/runs")).get("rows")) {
                runs.add(Visit.json(visit.get("/api/run/" + row.get("id").asInt())));
            }
        }
        return runs;
    }

    /** Putts are numbered in the order in which they were made. */
    private static void assertInOrder(JsonNode run) {
        List<Integer> ids = new ArrayList<>();
        run.get("putts").forEach(putt -> ids.add(putt.get("id").asInt()));
        assertThat(ids).isSorted();
    }
}
