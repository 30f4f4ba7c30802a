package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.green.Ball;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CupTest {
    private static final Turf TURF = Turf.of(10, 0, 0, 0.4);

    /**
     * A. R. Penner, Can. J. Phys. 80, 83 (2002), equation 23, as quoted second-hand: v = 1.63 (1 − (δ/54 mm)²) m/s.
     * Nothing of it is put into the simulation, whose ball is a rigid body that meets an edge.
     */
    @ParameterizedTest
    @CsvSource({"5, 1616", "10, 1574", "20, 1406", "30, 1127", "40, 736"})
    void theFastestBallThatDropsIsAboutAsFastAsPublished(double offsetMm, double publishedMmPerS) {
        assertThat(fastestDrop(offsetMm)).isBetween(0.9 * publishedMmPerS, 1.1 * publishedMmPerS);
    }

    /** Wesson (2008), as quoted second-hand: the hole is 4 % narrower for a ball at 0.23 m/s, and 25 % at 0.65 m/s. */
    @ParameterizedTest
    @CsvSource({"230, 0.96", "650, 0.75"})
    void aFasterBallFindsANarrowerHoleAboutAsPublished(double speed, double publishedShare) {
        double offsetMm = 0;
        while (over(speed, offsetMm + 0.25).dropped()) {
            offsetMm += 0.25;
        }
        assertThat(offsetMm / 54).isCloseTo(publishedShare, within(0.04));
    }

    /** Free fall alone, central: (2R − r) √(g/2r) = 1314 mm/s. No ball slower than that can clear the hole. */
    @ParameterizedTest
    @ValueSource(doubles = {100, 400, 800, 1200, 1310})
    void aCentralBallSlowerThanFreeFallAllowsAlwaysDrops(double speed) {
        assertThat(over(speed, 0).dropped()).isTrue();
    }

    @Test
    void aBallWideOfTheHoleNeverTouchesIt() {
        Roll roll = over(500, 54.5);

        assertThat(roll.dropped()).isFalse();
        assertThat(roll.rimmedOut()).isFalse();
    }

    @Test
    void aBallTooFastForItsOffsetLipsOutAndLosesSpeedAndDirection() {
        Roll roll = over(1000, 42);
        Roll free = roll(1000, 42, null);

        assertThat(roll.rimmedOut()).isTrue();
        assertThat(roll.at().x).isLessThan(free.at().x - 50);
        assertThat(Math.abs(roll.at().y - free.at().y)).isGreaterThan(50);
    }

    @Test
    void aBallBarelyOverTheLipMayHangThere() {
        // It dies with its centre 0.3 mm over the edge: it would tip with 138 mm/s², which the turf's drag holds.
        Roll roll = over(Math.sqrt(2 * TURF.alongLine() * 0.4), 0);

        assertThat(roll.dropped()).isFalse();
        assertThat(roll.at().fromHole()).isBetween(53.0, 54.0);
    }

    @Test
    void theRimGivesBackNoEnergyThatTheBallDidNotBring() {
        for (double offset = 0; offset < 54; offset += 1.5) {
            for (double speed = 100; speed < 3000; speed += 145) {
                Body start = ball(speed, offset);
                double[] most = {0};
                new Roll(TURF, new Cup(TURF, 0.4, 0.4, 0.4), start)
                        .run((before, now, beforeS, durationS) -> most[0] = Math.max(most[0], energy(now)));

                assertThat(most[0]).as("offset %s, speed %s", offset, speed).isLessThan(energy(start) * 1.0005);
            }
        }
    }

    /** Of motion, of spin (2/5 of a sphere's mass turns at its skin's speed) and of height, per unit of mass. */
    private static double energy(Body ball) {
        double spin = ball.wx * ball.wx + ball.wy * ball.wy + ball.wz * ball.wz;
        return ball.speed() * ball.speed() / 2 + spin / 5 + TURF.down() * ball.z;
    }

    private static double fastestDrop(double offsetMm) {
        double speed = 200;
        while (over(speed + 10, offsetMm).dropped()) {
            speed += 10;
        }
        return speed;
    }

    private static Roll over(double speed, double offsetMm) {
        return roll(speed, offsetMm, new Cup(TURF, 0.4, 0.4, 0.4));
    }

    private static Roll roll(double speed, double offsetMm, Cup cup) {
        return new Roll(TURF, cup, ball(speed, offsetMm)).run((before, now, beforeS, durationS) -> { });
    }

    /** At the edge of the hole, so far off its centre, and rolling. */
    private static Body ball(double speed, double offsetMm) {
        Body ball = new Body();
        ball.x = -Math.sqrt(Math.max(0, 54 * 54 - offsetMm * offsetMm)) - 0.1;
        ball.y = offsetMm;
        ball.z = Ball.RADIUS_MM;
        ball.vx = speed;
        ball.rollAlong();
        return ball;
    }
}
