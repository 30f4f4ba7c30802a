package org.cupbeam.green;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlaneTest {
    /** Computed independently (SciPy, checked there by numerical integration to 1e-7): metres, degrees, seconds. */
    @ParameterizedTest
    @CsvSource({
            "10,2,1.8288,90,0.548530305,0.140066989,0.416379998,3.099127970,3.566551251",
            "10,2,1.8288,60,0.548530305,0.140066989,2.151102229,2.855258247,4.021909954",
            "10,2,1.8288,120,0.548530305,0.140066989,-1.110152235,2.512588856,3.111192548",
            "12,3,2.0,100,0.456994399,0.210048000,0.350096715,4.368667686,5.105760732",
            "9,1,2.5,90,0.609569522,0.070043998,0.298481176,5.143547097,4.156131189",
            "11,4,1.5,150,0.498365104,0.279966117,-1.235124496,0.927292855,2.258181897"})
    void aPuttAcrossTheSlopeStopsWhereIntegrationSays(double stimpFt, double percent, double speed, double degrees,
                                                      double friction, double slope, double down, double across,
                                                      double seconds) {
        Plane plane = Plane.of(stimpFt, percent);
        Motion launch = new Motion(1000 * speed, Math.toRadians(degrees));
        assertThat(plane.frictionMmPerS2()).isCloseTo(1000 * friction, within(1e-6));
        assertThat(plane.slopeMmPerS2()).isCloseTo(1000 * slope, within(1e-6));
        assertThat(plane.stop(launch).downMm()).isCloseTo(1000 * down, within(2e-6));
        assertThat(plane.stop(launch).acrossMm()).isCloseTo(1000 * across, within(2e-6));
        assertThat(plane.stopTimeS(launch)).isCloseTo(seconds, within(1e-9));
    }

    /** The first of those putts after 3.5 s: Hipparchus 3.1, DormandPrince853. */
    @Test
    void onTheWayThereItIsWhereIntegrationSays() {
        Plane plane = Plane.of(10, 2);
        Motion launch = new Motion(1828.8, Math.PI / 2);
        double progress = progressAtS(plane, launch, 3.5);
        assertThat(plane.after(launch, progress).speedMmPerS()).isCloseTo(28.09547, within(1e-5));
        assertThat(plane.reach(launch, progress).downMm()).isCloseTo(415.56540, within(1e-5));
        assertThat(plane.reach(launch, progress).acrossMm()).isCloseTo(3098.68909, within(1e-5));
    }

    /** A second opinion on any putt: the equations of motion integrated with Hipparchus. */
    @Property(tries = 400, edgeCases = EdgeCasesMode.NONE)
    void theClosedFormIsTheSolutionOfTheEquationsOfMotion(
            @ForAll @DoubleRange(min = 5, max = 14) double stimpFt,
            @ForAll @DoubleRange(min = 0, max = 0.95) double shareOfRunaway,
            @ForAll @DoubleRange(min = 100, max = 5000) double speed,
            @ForAll @DoubleRange(min = -3.1, max = 3.1) double heading,
            @ForAll @DoubleRange(min = 0.01, max = 4) double progress) {
        Plane plane = Plane.of(stimpFt, shareOfRunaway * Slope.runawayPercent(stimpFt));
        Motion launch = new Motion(speed, heading);
        Motion then = plane.after(launch, progress);
        double time = plane.stopTimeS(launch) - plane.stopTimeS(then);

        double[] end = integrate(plane, launch, time);

        assertThat(plane.reach(launch, progress).downMm()).isCloseTo(end[0], within(1e-3));
        assertThat(plane.reach(launch, progress).acrossMm()).isCloseTo(end[1], within(1e-3));
        assertThat(then.speedMmPerS() * Math.cos(then.headingRad())).isCloseTo(end[2], within(1e-3));
        assertThat(then.speedMmPerS() * Math.sin(then.headingRad())).isCloseTo(end[3], within(1e-3));
    }

    @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
    void withoutASlopeThePathIsStraight(@ForAll @DoubleRange(min = 100, max = 5000) double speed,
                                        @ForAll @DoubleRange(min = -3.14, max = 3.14) double heading) {
        Plane plane = Plane.of(10, 0);
        Reach stop = plane.stop(new Motion(speed, heading));
        double length = Rolling.stopDistanceMm(speed, GreenSpeed.levelDecelerationMmPerS2(10));
        assertThat(stop.downMm()).isCloseTo(length * Math.cos(heading), within(1e-6));
        assertThat(stop.acrossMm()).isCloseTo(length * Math.sin(heading), within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"0,-2", "3.141592653589793,2"})
    void alongTheFallLineItIsRollingAlongALine(double heading, double uphillPercent) {
        Plane plane = Plane.of(10, 2);
        double deceleration = GreenSpeed.decelerationMmPerS2(10, uphillPercent);
        Motion launch = new Motion(1500, heading);
        assertThat(Math.abs(plane.stop(launch).downMm()))
                .isCloseTo(Rolling.stopDistanceMm(1500, deceleration), within(1e-6));
        assertThat(plane.stopTimeS(launch)).isCloseTo(Rolling.stopTimeS(1500, deceleration), within(1e-9));
    }

    /** As published for a rough incline (R. Cross, abstract): the angle to the stop does not depend on the speed. */
    @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
    void harderPuttsStopInTheSameDirectionAndFurtherBySquares(
            @ForAll @DoubleRange(min = 0.1, max = 3) double heading,
            @ForAll @DoubleRange(min = 1.1, max = 4) double harder) {
        Plane plane = Plane.of(10, 3);
        Reach soft = plane.stop(new Motion(1000, heading));
        Reach hard = plane.stop(new Motion(1000 * harder, heading));
        assertThat(hard.downMm()).isCloseTo(soft.downMm() * harder * harder, within(1e-6));
        assertThat(hard.acrossMm()).isCloseTo(soft.acrossMm() * harder * harder, within(1e-6));
    }

    @Test
    void aPlaneOnWhichNothingStopsIsRefused() {
        assertThatThrownBy(() -> Plane.of(10, 7.9)).hasMessageContaining("never stops");
        assertThatThrownBy(() -> Plane.of(10, -1)).hasMessageContaining("between 0");
    }

    private static double progressAtS(Plane plane, Motion launch, double timeS) {
        double low = 0;
        double high = 60;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            boolean before = plane.stopTimeS(launch) - plane.stopTimeS(plane.after(launch, middle)) < timeS;
            low = before ? middle : low;
            high = before ? high : middle;
        }
        return low;
    }

    private static double[] integrate(Plane plane, Motion launch, double timeS) {
        OrdinaryDifferentialEquation motion = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 4;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double friction = plane.frictionMmPerS2() / Math.hypot(y[2], y[3]);
                return new double[] {y[2], y[3], plane.slopeMmPerS2() - friction * y[2], -friction * y[3]};
            }
        };
        double[] start = {0, 0, launch.speedMmPerS() * Math.cos(launch.headingRad()),
                launch.speedMmPerS() * Math.sin(launch.headingRad())};
        return new DormandPrince853Integrator(1e-9, 0.1, 1e-9, 1e-9)
                .integrate(motion, new ODEState(0, start), timeS).getPrimaryState();
    }
}
