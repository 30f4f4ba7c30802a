package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.green.Ball;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TurfTest {
    private static final double FRICTION = 0.4;
    private static final double GRAVITY = 9806.65;

    @ParameterizedTest
    @CsvSource({"8", "10", "13"})
    void aStimpmetersBallRollsAsFarAsTheReadingSays(double stimpFt) {
        Roll roll = rolled(Turf.of(stimpFt, 0, 0, FRICTION), 1828.8, 0);

        assertThat(roll.at().x).isCloseTo(stimpFt * 304.8, within(0.01));
        assertThat(roll.at().y).isZero();
    }

    /** R/(S(1 ± slope)): A. D. Brede's one way and the other, computed independently (SciPy). */
    @ParameterizedTest
    @CsvSource({"1, 8.868248208", "2, 7.967501536", "3, 7.233783494", "-1, 11.464187814", "-2, 13.431805971",
            "-3, 16.215388075"})
    void aSlopeShortensTheRollUphillAndLengthensItDownhill(double uphillPercent, double expectedFt) {
        Roll roll = rolled(Turf.of(10, uphillPercent, 0, FRICTION), 1828.8, 0);

        assertThat(roll.at().x / 304.8).isCloseTo(expectedFt, within(1e-4));
    }

    /** Exact closed form of a ball on a plane, computed independently (SciPy, and an ODE of Hipparchus for a row). */
    @ParameterizedTest
    @CsvSource({
            "10, 2, 1828.8, 90, 416.379998, 3099.127970, 3.566551251",
            "10, 2, 1828.8, 60, 2151.102229, 2855.258247, 4.021909954",
            "10, 2, 1828.8, 120, -1110.152235, 2512.588856, 3.111192548",
            "12, 3, 2000, 100, 350.096715, 4368.667686, 5.105760732",
            "9, 1, 2500, 90, 298.481176, 5143.547097, 4.156131189",
            "11, 4, 1500, 150, -1235.124496, 927.292855, 2.258181897"})
    void aBallAcrossTheSlopeStopsWhereTheIndependentComputationSays(
            double stimpFt, double grade, double speed, double fromFallLineDeg, double x, double y, double t) {
        // There x points down the fall line: downhill along our line.
        Roll roll = rolled(Turf.of(stimpFt, -grade, 0, FRICTION), speed, Math.toRadians(fromFallLineDeg));

        assertThat(roll.at().x).isCloseTo(x, within(0.05));
        assertThat(roll.at().y).isCloseTo(y, within(0.05));
        assertThat(roll.timeS()).isCloseTo(t, within(0.002));
    }

    @Test
    void aSideSlopeCurvesTheBallToItsLowSide() {
        assertThat(rolled(Turf.of(10, 0, 2, FRICTION), 1800, 0).at().y).isGreaterThan(100);
        assertThat(rolled(Turf.of(10, 0, -2, FRICTION), 1800, 0).at().y).isLessThan(-100);
    }

    /** Textbook mechanics: it rolls at 5/7 of its first speed, after 12 v²/(49 µg). */
    @Test
    void aBallStruckWithoutSpinSlidesUntilItRolls() {
        Turf turf = Turf.of(10, 0, 0, FRICTION);
        Body ball = new Aim(2000, 0).start(0);

        while (ball.vx - ball.wy > Turf.STILL) {
            turf.step(ball, Double.MAX_VALUE);
        }

        assertThat(ball.vx).isCloseTo(2000 * 5.0 / 7, within(0.5));
        assertThat(ball.x).isCloseTo(12 * 2000.0 * 2000 / (49 * FRICTION * GRAVITY), within(0.5));
    }

    @Test
    void aSlopeThatStopsNoBallIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Turf.of(12, -7, 0, FRICTION))
                .withMessageContaining("stops no ball");
    }

    private static Roll rolled(Turf turf, double speed, double leftRad) {
        Body ball = new Body();
        ball.z = Ball.RADIUS_MM;
        ball.vx = speed * Math.cos(leftRad);
        ball.vy = speed * Math.sin(leftRad);
        ball.rollAlong();
        return new Roll(turf, null, ball).run((before, now, beforeS, durationS) -> { });
    }
}
