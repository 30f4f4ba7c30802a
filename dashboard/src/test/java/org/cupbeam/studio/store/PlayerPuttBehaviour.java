package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.Test;

/** A player's putts as insight reads them, and what tells that they have changed, whichever database they lie in. */
abstract class PlayerPuttBehaviour extends StoreFixture {
    private static final Who KIM = new Who("Kim", "a dog ran by", NOW.toEpochMilli());
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    @Test
    void readsThePlayersPuttsInOrderOfTimeWithWhatWasMeasured() {
        commit(lane.starts("r1", null, "Ada", 1), lane.passes(10).holes("r1", null, "Ada", 1),
                lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1),
                lane.passes(10).misses("r1", null, "Ada", 2, 417.3), lane.puttsOutsideAnyRun());

        List<PlayerPutt> putts = putts(1);
        assertThat(putts).extracting(PlayerPutt::distanceMm, PlayerPutt::holed, PlayerPutt::finishMm,
                PlayerPutt::finishBelowMm, PlayerPutt::paceMm, PlayerPutt::speedAtHoleMmPerS, PlayerPutt::rim).containsExactly(
                tuple(914.4, true, Double.NaN, Double.NaN, 402.3, 812.5, false),
                tuple(1828.8, false, 417.3, Double.NaN, 417.3, 1250.0, false));
        assertThat(putts).allSatisfy(putt -> assertThat(putt.tags()).isEqualTo(ScriptedLane.TAGS));
        assertThat(putts).allSatisfy(putt -> assertThat(putt.stimpFt()).isEqualTo(9.4));
        assertThat(putts.get(1).atMs() - putts.get(0).atMs()).isEqualTo(10_000);
    }

    @Test
    void tellsOfAMissThatNoBeamSawOnlyWhereItMustLieBelow() {
        commit(lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 100), lane.holes("r1", null, "Ada", 1));
        store.writing(h -> h.execute("UPDATE attempt SET finish_mm = NULL, finish_high_mm = -210, pace_mm = NULL, "
                + "speed_at_hole_mm_s = NULL, stimp_ft = NULL, stimp_sd_ft = NULL"));

        assertThat(putts(1)).extracting(PlayerPutt::finishMm, PlayerPutt::finishBelowMm, PlayerPutt::paceMm,
                PlayerPutt::stimpSdFt).containsExactly(tuple(Double.NaN, -210.0, Double.NaN, Double.NaN),
                tuple(Double.NaN, Double.NaN, Double.NaN, Double.NaN));
    }

    @Test
    void knowsEveryPairOfTags() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        for (Tags.Break breaks : Tags.Break.values()) {
            for (Tags.Slope slope : Tags.Slope.values()) {
                store.writing(h -> h.execute("UPDATE attempt SET breaks = ?, slope = ?", breaks.word(), slope.word()));
                assertThat(putts(1).get(0).tags()).isEqualTo(new Tags(breaks, slope));
            }
            store.writing(h -> h.execute("UPDATE attempt SET breaks = ?, slope = NULL", breaks.word()));
            assertThat(putts(1).get(0).tags()).isEqualTo(new Tags(breaks, null));
        }
    }

    @Test
    void leavesOutWhatWasTakenBackOrSetNotToCount() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 2, 50),
                lane.holes("r1", null, "Ada", 2), lane.takesBack(4));
        assertThat(putts(1)).hasSize(2);
        new RecordBook(store).voids(1, KIM);

        assertThat(putts(1)).extracting(PlayerPutt::finishMm).containsExactly(50.0);
    }

    @Test
    void theVersionChangesWithWhateverChangesThePuttsAndWithNothingElse() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1),
                lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1));
        PuttsVersion first = version(1);
        commit(lane.holes("r2", null, "Bo", 2), lane.starts("r3", null, "Ada", 1));
        assertThat(version(1)).as("of another player").isEqualTo(first);

        commit(lane.holes("r3", null, "Ada", 1));
        PuttsVersion second = changed(first);
        commit(lane.takesBack(lane.sequence()));
        PuttsVersion third = changed(second);
        new RecordBook(store).voids(1, KIM);
        PuttsVersion fourth = changed(third);
        new RecordBook(store).restores(1, KIM);
        PuttsVersion fifth = changed(fourth);
        new RecordBook(store).reassigns(2, 1, KIM);
        assertThat(putts(1)).as("Bo's are Ada's now").hasSize(3);
        changed(fifth);
    }

    @Test
    void aClockThatIsSetRightChangesTheVersion() {
        lane.boots("boot-2", Instant.parse("2000-01-01T00:00:00Z"));
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        PuttsVersion before = version(1);
        commit(lane.passes(60).setsClock(NOW));

        changed(before);
        assertThat(putts(1).get(0).atMs()).isEqualTo(NOW.minusSeconds(60).toEpochMilli());
    }

    @Test
    void countsEachPlayersPuttsByDistance() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 50),
                lane.holes("r1", null, "Ada", 2), lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1),
                lane.takesBack(6), lane.puttsOutsideAnyRun());
        Map<Integer, List<PlayerTallies>> all = store.read(h -> PlayerTallies.since(h, 0));

        assertThat(all).containsOnlyKeys(1);
        assertThat(all.get(1)).containsExactly(new PlayerTallies(914.4, 2, 1), new PlayerTallies(1828.8, 1, 1));
        Map<Integer, List<PlayerTallies>> none = store.read(h -> PlayerTallies.since(h, NOW.toEpochMilli()));
        assertThat(none).as("none since").isEmpty();
    }

    private PuttsVersion changed(PuttsVersion before) {
        PuttsVersion now = version(1);
        assertThat(now).isNotEqualTo(before);
        return now;
    }

    private PuttsVersion version(int player) {
        return store.read(h -> PuttsVersion.of(h, player));
    }

    private List<PlayerPutt> putts(int player) {
        return store.read(h -> PlayerPutt.all(h, player, Function.identity()));
    }
}
