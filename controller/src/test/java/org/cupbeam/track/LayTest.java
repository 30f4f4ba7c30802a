package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.green.Ball;
import org.cupbeam.rig.Channel.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LayTest {
    /** 2√(r² − h²) at r = 21.335 mm, computed independently (SciPy). */
    @ParameterizedTest
    @CsvSource({"0, 42.670", "5, 41.482", "10, 37.693", "15, 30.344", "18, 22.907", "20, 14.857"})
    void theFurtherABeamIsFromTheBallsMiddleTheShorterIsTheWayOverWhichItIsBlocked(double offMm, double chordMm) {
        Lay above = new Lay(new RigSketch().beam(100, Ball.RADIUS_MM + offMm).rig());
        Lay below = new Lay(new RigSketch().beam(100, Ball.RADIUS_MM - offMm).rig());

        assertThat(above.departureMm(0) - above.arrivalMm(0)).isCloseTo(chordMm, within(0.0005));
        assertThat(below.departureMm(0) - below.arrivalMm(0)).isCloseTo(chordMm, within(0.0005));
        assertThat((above.arrivalMm(0) + above.departureMm(0)) / 2).isCloseTo(100, within(1e-9));
    }

    @Test
    void beamsAreCountedAlongTheLineWhateverTheirChannels() {
        Lay lay = new Lay(new RigSketch().beam(900, 21).beam(-240, 21).single(Kind.CUP).beam(-300, 21).rig());

        assertThat(lay.beams).isEqualTo(3);
        assertThat(lay.before).isEqualTo(2);
        assertThat(lay.channel).containsExactly(3, 1, 0);
        assertThat(lay.positionMm).containsExactly(-300, -240, 900);
        assertThat(lay.isBeforeHole(1)).isTrue();
        assertThat(lay.isBeforeHole(2)).isFalse();
    }

    @Test
    void aRigWithoutBeamsLiesToo() {
        assertThat(new Lay(new RigSketch().single(Kind.CUP).rig()).beams).isZero();
    }

    @Test
    void aBallBlocksTwoBeamsAtOnceOnlyWhereTheyStandNearerThanItIsWide() {
        Lay lay = new Lay(new RigSketch().beam(0, Ball.RADIUS_MM).beam(42, Ball.RADIUS_MM).beam(85, Ball.RADIUS_MM).rig());

        assertThat(lay.overlap(0, 1)).isTrue();
        assertThat(lay.overlap(1, 0)).isTrue();
        assertThat(lay.overlap(1, 2)).isFalse();
        Lay standard = new Lay(PracticeRigs.STANDARD.level());
        assertThat(standard.overlap(0, 1)).isFalse();
    }
}
