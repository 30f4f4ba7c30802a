package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;

/** Rolls over the standard rig: pairs at -300 and 914.4 mm, 60 mm apart; channel 0 is the cup, then the beams. */
class RollWatchTest {
    private static final double CHORD_MM = 42.66;
    private static final double[] AT_MM = {-300, -240, 914.4, 974.4};
    private final Rig rig = PracticeRigs.STANDARD.level();
    private final List<RolledBall> balls = new ArrayList<>();
    private final RollWatch watch = new RollWatch(rig, balls::add);

    /** A ball at an even speed from some beam on, so many beams far; ends once it is clear of the last. */
    private long rolls(long startNs, int from, int beams, int step, double speedMmPerS) {
        long offNs = startNs;
        for (int i = 0; i < beams; i++) {
            int beam = from + i * step;
            long onNs = startNs + (long) (Math.abs(AT_MM[beam] - AT_MM[from]) / speedMmPerS * 1e9);
            offNs = onNs + (long) (CHORD_MM / speedMmPerS * 1e9);
            blocks(beam, onNs, offNs);
        }
        watch.advance(offNs + 2_000_000);
        return offNs;
    }

    private void blocks(int beam, long onNs, long offNs) {
        watch.edge(1 + beam, true, onNs);
        watch.edge(1 + beam, false, offNs);
    }

    @Test
    void aBallThroughAllBeamsIsARollEitherWay() {
        rolls(1_000_000_000, 0, 4, 1, 1500);
        rolls(9_000_000_000L, 3, 4, -1, 1200);

        assertThat(balls).hasSize(2);
        assertThat(balls.get(0).toward()).isTrue();
        assertThat(balls.get(0).crossings()).extracting(RolledBall.Crossing::beam).containsExactly(0, 1, 2, 3);
        assertThat(balls.get(0).timeNs()).isEqualTo(1_000_000_000);
        assertThat(balls.get(1).toward()).isFalse();
        assertThat(balls.get(1).crossings()).extracting(RolledBall.Crossing::beam).containsExactly(3, 2, 1, 0);
    }

    @Test
    void aBallThatStopsOnItsWayIsNoneAndTheNextOneIs() {
        rolls(1_000_000_000, 0, 2, 1, 1500);
        rolls(5_000_000_000L, 0, 4, 1, 1500);
        assertThat(balls).hasSize(1);
    }

    @Test
    void aShoeThatBlocksBothBeamsOfAPairIsNone() {
        for (long at = 0; at < 4; at++) {
            long onNs = 1_000_000_000L * (at + 1);
            watch.edge(1, true, onNs);
            watch.edge(2, true, onNs + 40_000_000);
            watch.edge(1, false, onNs + 90_000_000);
            watch.edge(2, false, onNs + 130_000_000);
            watch.edge(3, true, onNs + 500_000_000);
            watch.edge(4, true, onNs + 540_000_000);
            watch.edge(3, false, onNs + 590_000_000);
            watch.edge(4, false, onNs + 630_000_000);
        }
        watch.advance(100_000_000_000L);
        assertThat(balls).isEmpty();
    }

    @Test
    void aCrossingThatComesTooLateForTheSpeedBeforeIsAnotherBalls() {
        rolls(1_000_000_000, 0, 2, 1, 1500);
        rolls(6_000_000_000L, 2, 2, 1, 1400);
        assertThat(balls).isEmpty();
    }

    @Test
    void aBallThatDropsIsNone() {
        rolls(1_000_000_000, 0, 2, 1, 1500);
        watch.edge(0, true, 1_300_000_000);
        watch.edge(0, false, 1_340_000_000);
        watch.advance(1_500_000_000);
        rolls(1_809_600_000, 2, 2, 1, 1500);
        assertThat(balls).isEmpty();
    }

    @Test
    void aBeamThatChattersAtABallsLimbsCountsItOnce() {
        long onNs = 1_000_000_000;
        for (int beam = 0; beam < 4; beam++) {
            long at = onNs + (long) ((AT_MM[beam] - AT_MM[0]) / 1500 * 1e9);
            watch.edge(1 + beam, true, at);
            watch.edge(1 + beam, false, at + 300_000);
            watch.edge(1 + beam, true, at + 500_000);
            watch.edge(1 + beam, false, at + (long) (CHORD_MM / 1500 * 1e9));
        }
        watch.advance(onNs + 2_000_000_000L);
        assertThat(balls).hasSize(1);
        assertThat(balls.get(0).crossings().get(0).onNs()).isEqualTo(onNs);
    }
}
