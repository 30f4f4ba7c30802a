package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.green.Ball;
import org.junit.jupiter.api.Test;

class ShadowTest {
    private final List<Long> changes = new ArrayList<>();

    @Test
    void aFastBallBlocksABeamForItsChordOverItsSpeed() {
        // At a height of 31.335 mm the section is 37.693 mm long (elementary geometry).
        run(2500, 0, new Light.Beam(200, 31.335));

        double speedThere = Math.sqrt(2500.0 * 2500 - 2 * Turf.of(10, 0, 0, 0.4).alongLine() * 200);
        assertThat(changes).hasSize(2);
        assertThat(changes.get(1) - changes.get(0)).isCloseTo(Math.round(37.693 / speedThere * 1e9), within(2_000L));
    }

    @Test
    void aSlantingBallBlocksABeamForLongerByItsSlant() {
        run(2500, 0, new Light.Beam(100, Ball.RADIUS_MM));
        run(2500, Math.toRadians(20), new Light.Beam(100 * Math.cos(Math.toRadians(20)), Ball.RADIUS_MM));

        double straight = changes.get(1) - changes.get(0);
        double slanting = changes.get(3) - changes.get(2);
        assertThat(slanting / straight).isCloseTo(1 / Math.cos(Math.toRadians(20)), within(1e-3));
    }

    @Test
    void aBallThatStopsInABeamGoesOnBlockingIt() {
        double reach = 500.0 * 500 / (2 * Turf.of(10, 0, 0, 0.4).alongLine());
        Shadow shadow = run(500, 0, new Light.Beam(reach, Ball.RADIUS_MM));

        assertThat(changes).hasSize(1);
        assertThat(shadow.blocks(0)).isTrue();
    }

    @Test
    void aBallThatStopsShortOfABeamDoesNotTouchIt() {
        double reach = 500.0 * 500 / (2 * Turf.of(10, 0, 0, 0.4).alongLine());
        Shadow shadow = run(500, 0, new Light.Beam(reach + Ball.RADIUS_MM + 0.1, Ball.RADIUS_MM));

        assertThat(shadow.changes()).isEmpty();
    }

    private Shadow run(double speed, double leftRad, Light.Beam beam) {
        Body ball = new Body();
        ball.z = Ball.RADIUS_MM;
        ball.vx = speed * Math.cos(leftRad);
        ball.vy = speed * Math.sin(leftRad);
        ball.rollAlong();
        Shadow shadow = new Shadow(List.of(beam), ball);
        new Roll(Turf.of(10, 0, 0, 0.4), null, ball).run(shadow);
        shadow.changes().forEach(change -> changes.add(change.timeNs()));
        return shadow;
    }
}
