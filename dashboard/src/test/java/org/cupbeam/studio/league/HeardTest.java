package org.cupbeam.studio.league;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.cupbeam.studio.league.Heard.Behind;
import org.cupbeam.studio.store.league.LaneHeard;
import org.junit.jupiter.api.Test;

/** The week ends at 1,000. */
class HeardTest {
    @Test
    void aStudioIsHeardUpToWhereTheLastOfItsLanesInUseIs() {
        List<LaneHeard> lanes = List.of(lane("home", true, 1_500), lane("home", true, 1_000), lane("mill", true, 1_500), lane("mill", true, 999));

        assertThat(Heard.of(lanes, Set.of(), 1_000)).isEqualTo(new Heard(2, List.of(new Behind("mill", 999))));
    }

    @Test
    void aLaneThatNobodyPuttsOnIsNotWaitedFor() {
        List<LaneHeard> lanes = List.of(lane("home", true, 1_500), lane("home", false, 3), lane("attic", false, 5));

        assertThat(Heard.of(lanes, Set.of(), 1_000)).isEqualTo(new Heard(1, List.of()));
    }

    @Test
    void aStudioThatWasChosenIsWaitedForEvenIfNobodyPuttedThere() {
        List<LaneHeard> lanes = List.of(lane("home", true, 1_500), lane("attic", false, 5), lane("attic", false, 1), lane("mill", true, 1));

        assertThat(Heard.of(lanes, Set.of("home", "attic", "far"), 1_000)).isEqualTo(new Heard(3,
                List.of(new Behind("attic", 5), new Behind("far", 0))));
    }

    @Test
    void withoutAnyLaneNobodyIsWaitedFor() {
        assertThat(Heard.of(List.of(), Set.of(), 1_000)).isEqualTo(new Heard(0, List.of()));
    }

    private static LaneHeard lane(String studio, boolean inUse, long heardMs) {
        return new LaneHeard(studio, "one", inUse, heardMs);
    }
}
