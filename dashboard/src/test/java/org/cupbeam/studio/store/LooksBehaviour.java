package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.event.Event;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What whoever runs a lane looks up: names and the newest putts, whichever database they lie in. */
abstract class LooksBehaviour {
    private static final Topics ONE = new Topics("home", "one");

    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private Store store;
    private Keeper keeper;

    abstract Database database();

    @BeforeEach
    void open() {
        store = Store.open(database());
        keeper = new Keeper(store);
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void namesWhoPlayedLastFirst() {
        keep(lane, lane.starts("r1", null, "Ada", 1), lane.passes(60).starts("r2", null, "Bo", 1),
                lane.passes(60).starts("r3", null, "Cy", 1), lane.passes(60).starts("r4", null, "Ada", 1));

        assertThat(names(10)).containsExactly("Ada", "Cy", "Bo");
        assertThat(names(2)).containsExactly("Ada", "Cy");
    }

    @Test
    void doesNotNameWhoHasBeenForgotten() {
        keep(lane, lane.starts("r1", null, "Ada", 1), lane.starts("r2", null, "Bo", 1));
        store.writing(h -> h.execute("UPDATE player SET name = NULL, name_key = NULL WHERE name = 'Ada'"));

        assertThat(names(10)).containsExactly("Bo");
    }

    @Test
    void showsTheNewestPuttsOfALaneWithWhatWasSaidOfThem() {
        keep(lane, lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 417.3),
                lane.holes("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 2, 1200), lane.takesBack(4),
                lane.voids(2, "Kim", null), lane.voids(2, "Lou", null), lane.puttsOutsideAnyRun());

        assertThat(putts("j1", 3)).extracting(LanePutt::sequence, LanePutt::player,
                LanePutt::holed, LanePutt::finishMm, LanePutt::overshoot, LanePutt::counts, LanePutt::corrected,
                LanePutt::correctedBy).containsExactly(
                tuple(8L, null, false, null, false, true, null, null),
                tuple(4L, "Ada", false, 1200.0, true, false, "taken-back", "pedal"),
                tuple(3L, "Ada", true, null, false, true, null, null));
        assertThat(putts("j1", 10).get(3))
                .as("struck twice is one putt").extracting(LanePutt::sequence, LanePutt::correctedBy, LanePutt::stationMm)
                .containsExactly(2L, "Lou", 914.4);
    }

    @Test
    void showsNoPuttsOfAnotherLaneOrOfAnEarlierCard() {
        keep(lane, lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        ScriptedLane other = new ScriptedLane("two", "j2");
        keep(other, other.puttsOutsideAnyRun());
        ScriptedLane again = new ScriptedLane("one", "j3");
        keep(again, again.puttsOutsideAnyRun());

        assertThat(putts("j1", 10)).extracting(LanePutt::sequence).containsExactly(2L);
        assertThat(putts("j3", 10)).hasSize(1);
        assertThat(putts("j2", 10)).isEmpty();
    }

    @Test
    void tellsTheLastReadingOfAGreenInEachQuarterOfAnHour() {
        keep(lane, lane.puttsOutsideAnyRun(), lane.passes(60).puttsOutsideAnyRun(), lane.passes(1_000).puttsOutsideAnyRun());
        ScriptedLane other = new ScriptedLane("two", "j2");
        keep(other, other.puttsOutsideAnyRun());
        long startMs = Instant.parse("2026-11-25T18:00:00Z").toEpochMilli();

        assertThat(readings(startMs, startMs + 86_400_000)).containsExactly(new GreenReading(startMs + 60_000, 9.4, 0.2),
                new GreenReading(startMs + 1_060_000, 9.4, 0.2));
        assertThat(readings(startMs, startMs + 900_000)).hasSize(1);
        assertThat(readings(startMs - 86_400_000, startMs)).isEmpty();
    }

    @Test
    void keepsTheRangeThatIsWantedOfEachGreen() {
        Topics two = new Topics("home", "two");
        store.writing(h -> new GreenRange(9.5, 11).set(h, ONE, 1));
        store.writing(h -> new GreenRange(8, 9).set(h, two, 1));
        store.writing(h -> new GreenRange(10, 12).set(h, ONE, 2));

        assertThat(store.read(GreenRange::all)).containsOnly(Map.entry(ONE, new GreenRange(10, 12)),
                Map.entry(two, new GreenRange(8, 9)));
        store.writing(h -> GreenRange.clear(h, ONE));
        Optional<GreenRange> one = store.read(h -> GreenRange.of(h, ONE));
        Optional<GreenRange> other = store.read(h -> GreenRange.of(h, two));
        assertThat(one).isEmpty();
        assertThat(other).contains(new GreenRange(8, 9));
    }

    private List<GreenReading> readings(long fromMs, long toMs) {
        return store.read(h -> GreenReading.between(h, ONE, fromMs, toMs));
    }

    private List<String> names(int most) {
        return store.read(h -> RecentPlayers.of(h, Sight.ALL, most));
    }

    private List<LanePutt> putts(String journal, int most) {
        return store.read(h -> LanePutt.newest(h, ONE, journal, most));
    }

    private void keep(ScriptedLane from, Event... events) {
        Instant now = Instant.parse("2026-11-25T19:00:00Z");
        List<Arrival> arrivals = Arrays.stream(events).map(event -> new Arrival(from.source, event.sequence(),
                event.time(), event, null, ScriptedLane.json(event), now)).toList();
        keeper.commit(new Batch(arrivals, List.of(), List.of()));
    }
}
