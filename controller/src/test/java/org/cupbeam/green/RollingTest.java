package org.cupbeam.green;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class RollingTest {
    @Property(tries = 300)
    void speedTimeAndDistanceTellTheSameStory(@ForAll @DoubleRange(min = 1, max = 4000) double speed,
                                              @ForAll @DoubleRange(min = 50, max = 2000) double deceleration,
                                              @ForAll @DoubleRange(min = 0, max = 1) double share) {
        double distance = share * Rolling.stopDistanceMm(speed, deceleration);
        double left = Rolling.speedAfterMmPerS(speed, deceleration, distance * (1 - 1e-12));
        double time = Rolling.timeToS(speed, deceleration, distance * (1 - 1e-12));

        assertThat(speed - deceleration * time).isCloseTo(left, within(1e-6 * speed));
        assertThat(Rolling.distanceMm(speed, deceleration, time)).isCloseTo(distance, within(1e-6));
        assertThat(distance + Rolling.stopDistanceMm(left, deceleration))
                .isCloseTo(Rolling.stopDistanceMm(speed, deceleration), within(1e-6));
    }

    @Property(tries = 100)
    void theSpeedToStopAtADistanceStopsThere(@ForAll @DoubleRange(min = 0, max = 30_000) double distance,
                                             @ForAll @DoubleRange(min = 50, max = 2000) double deceleration) {
        double speed = Rolling.speedToStopMmPerS(distance, deceleration);
        assertThat(Rolling.stopDistanceMm(speed, deceleration)).isCloseTo(distance, within(1e-8));
    }

    @Test
    void aBallThatHasStoppedStays() {
        assertThat(Rolling.stopTimeS(1000, 500)).isEqualTo(2);
        assertThat(Rolling.distanceMm(1000, 500, 2)).isEqualTo(1000);
        assertThat(Rolling.distanceMm(1000, 500, 60)).isEqualTo(1000);
    }

    @Test
    void whatIsNeverReachedIsNotANumber() {
        assertThat(Rolling.speedAfterMmPerS(1000, 500, 1001)).isNaN();
        assertThat(Rolling.timeToS(1000, 500, 1001)).isNaN();
    }

    @Test
    void onARunawaySlopeABallNeverStops() {
        double deceleration = GreenSpeed.decelerationMmPerS2(10, -8);
        assertThat(deceleration).isNegative();
        assertThat(Rolling.stopDistanceMm(100, deceleration)).isInfinite();
        assertThat(Rolling.stopTimeS(100, deceleration)).isInfinite();
        assertThat(Rolling.speedToStopMmPerS(100, deceleration)).isNaN();
        assertThat(Rolling.speedAfterMmPerS(100, deceleration, 1000)).isGreaterThan(100);
        assertThat(Rolling.timeToS(100, deceleration, 1000)).isLessThan(10);
    }

    @Test
    void withNoDecelerationTimeIsDistanceOverSpeed() {
        assertThat(Rolling.timeToS(500, 0, 1000)).isEqualTo(2);
        assertThat(Rolling.timeToS(0, 500, 0)).isZero();
    }
}
