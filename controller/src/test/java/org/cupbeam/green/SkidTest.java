package org.cupbeam.green;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class SkidTest {
    /** Textbook mechanics: friction μg slows the ball and turns it, 5/2 of that at its surface, until it rolls. */
    @Property(tries = 100)
    void slidingEndsWhenTheSurfaceKeepsUp(@ForAll @DoubleRange(min = 100, max = 6000) double launch,
                                          @ForAll @DoubleRange(min = 0.1, max = 1) double friction) {
        double slowing = friction * Slope.GRAVITY_MM_PER_S2;
        double time = Skid.timeS(launch, friction);
        double speed = launch - slowing * time;
        assertThat(speed).isCloseTo(2.5 * slowing * time, within(1e-8 * launch));
        assertThat(Skid.rollSpeedMmPerS(launch)).isCloseTo(speed, within(1e-8 * launch));
        assertThat(Skid.distanceMm(launch, friction)).isCloseTo((launch + speed) / 2 * time, within(1e-6));
    }

    /** Cochran and Stobbs, and Daish, quoted second-hand: pure roll after some 10 to 20 % of the putt. */
    @Test
    void aPuttSkidsForAboutASixthOfItsWay() {
        double launch = 2500;
        double skid = Skid.distanceMm(launch, 0.4);
        double roll = Rolling.stopDistanceMm(Skid.rollSpeedMmPerS(launch), GreenSpeed.levelDecelerationMmPerS2(10));
        assertThat(skid / (skid + roll)).isBetween(0.10, 0.20);
    }
}
