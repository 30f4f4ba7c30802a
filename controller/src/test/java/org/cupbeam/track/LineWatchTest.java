package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.rig.Channel;
import org.junit.jupiter.api.Test;

class LineWatchTest {
    private final LineWatch beam = new LineWatch(Channel.Kind.BEAM);
    private double nowS;

    private void turns(boolean active, double atS) {
        passTo(atS);
        beam.edge(active, ns(atS), 0);
    }

    private void passTo(double atS) {
        while (beam.dueNs() <= ns(atS)) {
            beam.settle(beam.dueNs());
        }
        nowS = atS;
    }

    private static long ns(double seconds) {
        return Math.round(seconds * 1e9);
    }

    @Test
    void oneThatIsOnForEightSecondsIsStuckAndIsWellOnceItIsOffForOne() {
        turns(true, 100);
        passTo(107.9);
        assertThat(beam.doubt()).isEqualTo(Doubt.NONE);
        passTo(108.1);
        assertThat(beam.doubt()).isEqualTo(Doubt.STUCK);
        turns(false, 200);
        passTo(200.9);
        assertThat(beam.doubt()).isEqualTo(Doubt.STUCK);
        passTo(201.1);
        assertThat(beam.doubt()).isEqualTo(Doubt.NONE);
    }

    @Test
    void oneThatIsOnFromTheStartIsStuckAfterTwoSecondsAndOneThatOnlyPassesIsNot() {
        turns(true, 0.001);
        passTo(2.1);
        assertThat(beam.doubt()).isEqualTo(Doubt.STUCK);
        turns(false, 3);
        passTo(12.9);
        assertThat(beam.doubt()).as("a hand may be in a cup that is the wrong way round").isEqualTo(Doubt.STUCK);
        passTo(13.1);
        assertThat(beam.doubt()).isEqualTo(Doubt.NONE);
        turns(true, 20);
        passTo(22.5);
        assertThat(beam.doubt()).isEqualTo(Doubt.NONE);
    }

    @Test
    void oneThatIsOnAtRestAndOffForMomentsIsTheWrongWayRound() {
        turns(true, 0.001);
        for (double atS = 20; atS < 60; atS += 20) {
            assertThat(beam.doubt()).isNotEqualTo(Doubt.REVERSED);
            turns(false, atS);
            turns(true, atS + 0.04);
        }
        assertThat(beam.doubt()).isEqualTo(Doubt.REVERSED);
    }

    @Test
    void shufflingFeetAreNotTheWrongWayRound() {
        turns(true, 100);
        passTo(110);
        for (double atS = 110; atS < 114; atS += 1) {
            turns(false, atS);
            turns(true, atS + 0.3);
        }
        assertThat(beam.doubt()).isEqualTo(Doubt.STUCK);
    }

    @Test
    void oneThatTurnsTenThousandTimesASecondChattersWithinMillisecondsAndIsWellOnceItIsQuiet() {
        for (int i = 0; i < 40; i++) {
            turns(i % 2 == 0, 50 + i * 50e-6);
        }
        assertThat(beam.doubt()).isEqualTo(Doubt.CHATTERING);
        passTo(nowS + 9.9);
        assertThat(beam.doubt()).isEqualTo(Doubt.CHATTERING);
        passTo(nowS + 0.2);
        assertThat(beam.doubt()).isEqualTo(Doubt.NONE);
    }
}
