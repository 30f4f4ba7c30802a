package org.cupbeam.green;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CaptureTest {
    /** Holmes 1991 and Penner 2002, quoted second-hand: 1.31 m/s by free fall alone, 1.626 by all ways together. */
    @Test
    void thePublishedCentralLimitsHold() {
        assertThat(Capture.freeFallLimitMmPerS(0)).isCloseTo(1310, within(5.0));
        assertThat(Capture.limitMmPerS(0)).isCloseTo(1626, within(5.0));
    }

    /** Computed independently (SciPy) with R = 54, r = 21.335 mm, g = 9.80665 m/s²; five decimals of m/s. */
    @ParameterizedTest
    @CsvSource({"0,1313.84", "10,1275.91", "20,1151.95", "30,876.59", "-20,1151.95", "33,0", "54,0"})
    void freeFallNeedsASlowerBallOffCentreAndNeverHappensNearTheEdge(double offCentreMm, double limit) {
        assertThat(Capture.freeFallLimitMmPerS(offCentreMm)).isCloseTo(limit, within(0.006));
    }

    /** Penner's equation 23 as quoted second-hand, computed independently (SciPy); five decimals of m/s. */
    @ParameterizedTest
    @CsvSource({"0,1630.00", "10,1574.10", "20,1406.41", "30,1126.91", "40,735.62", "50,232.54", "54,0", "-40,735.62",
            "60,0"})
    void theHoleKeepsSlowerBallsFurtherOffCentre(double offCentreMm, double limit) {
        assertThat(Capture.limitMmPerS(offCentreMm)).isCloseTo(limit, within(0.006));
    }

    /** Penner 2002, quoted second-hand: on 5 degrees 1.71 m/s uphill, 1.56 downhill; and 1.7060, 1.5633 by SciPy. */
    @Test
    void uphillTheHoleKeepsMore() {
        double percent = 100 * Math.tan(Math.toRadians(5));
        double uphill = Capture.limitMmPerS(0) * Capture.slopeFactor(percent, 0);
        double downhill = Capture.limitMmPerS(0) * Capture.slopeFactor(percent, Math.PI);
        assertThat(uphill).isCloseTo(1710, within(5.0)).isCloseTo(1706.0, within(0.06));
        assertThat(downhill).isCloseTo(1560, within(5.0)).isCloseTo(1563.3, within(0.06));
        assertThat(Capture.slopeFactor(percent, Math.PI / 2)).isCloseTo(1, within(1e-12));
    }

    /** Computed independently (SciPy): level, 10 ft, by how far past the hole's centre the ball would run; inches. */
    @ParameterizedTest
    @CsvSource({"0,0,4.252", "6,0.4089,3.680", "12,0.5783,3.415", "17,0.6883,3.232", "18,0.7083,3.197",
            "24,0.8179,3.001", "36,1.0017,2.640"})
    void theFasterTheBallTheNarrowerTheHole(double overrunIn, double metresPerS, double widthIn) {
        double speed = Rolling.speedToStopMmPerS(25.4 * overrunIn, GreenSpeed.levelDecelerationMmPerS2(10));
        assertThat(speed).isCloseTo(1000 * metresPerS, within(0.055));
        assertThat(Capture.effectiveWidthMm(speed) / 25.4).isCloseTo(widthIn, within(0.00055));
    }

    /** Computed independently from Penner's equation 23: 22.5 % smaller at 0.65 m/s, 7.3 % at 0.23 m/s. */
    @ParameterizedTest
    @CsvSource({"650,0.225", "230,0.073"})
    void aMovingBallSeesAShareOfTheHole(double speed, double smallerBy) {
        assertThat(1 - Capture.effectiveWidthMm(speed) / (2 * Hole.RADIUS_MM)).isCloseTo(smallerBy, within(0.0006));
    }

    @Test
    void tooFastForTheHoleThereIsNone() {
        assertThat(Capture.effectiveWidthMm(1630)).isZero();
        assertThat(Capture.effectiveWidthMm(3000)).isZero();
    }

    @Test
    void theWidthIsTwiceTheOffCentreAtTheLimit() {
        for (double offCentreMm = 0; offCentreMm < 54; offCentreMm += 3) {
            assertThat(Capture.effectiveWidthMm(Capture.limitMmPerS(offCentreMm)))
                    .isCloseTo(2 * offCentreMm, within(1e-6));
        }
    }

    /** Rules of Golf, Equipment Rules and Definitions, through a secondary page: 1.680 in at least, 4.25 in. */
    @Test
    void ballAndHoleAreOfTheRulesSize() {
        assertThat(Ball.DIAMETER_MM).isCloseTo(1.680 * 25.4, within(0.005));
        assertThat(2 * Hole.RADIUS_MM).isCloseTo(4.25 * 25.4, within(0.06));
    }
}
