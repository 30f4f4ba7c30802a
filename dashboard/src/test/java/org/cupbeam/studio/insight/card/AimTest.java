package org.cupbeam.studio.insight.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.green.Hole;
import org.cupbeam.green.Slope;
import org.cupbeam.studio.insight.words.Units;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AimTest {
    /** Computed independently (SciPy): across the slope, over the hole's centre at 0.5 m/s; ft, m/s, degrees, m. */
    @ParameterizedTest
    @CsvSource({
            "10,1,10,1.896653,2.936355,0.156344,6.84165", "10,2,10,1.898936,5.919384,0.316022,13.80875",
            "10,3,10,1.903045,9.003082,0.482924,21.04536", "12,2,10,1.746402,6.908272,0.369295,15.35610",
            "8,2,10,2.107237,4.881549,0.260317,12.07857", "10,2,5,1.387767,5.121404,0.136587,9.91906",
            "10,2,15,2.299499,6.281060,0.503224,16.31833", "10,2,20,2.640146,6.493640,0.693866,18.17925"})
    void acrossTheSlopeTheAimIsTheKnownOne(double stimpFt, double percent, double ft, double start, double launchDegrees,
                                           double besideM, double entryDegrees) {
        Aim left = Aim.atSpeed(new Line(stimpFt, 0, percent), 304.8 * ft, 500);
        assertThat(left.startMmPerS()).isCloseTo(1000 * start, within(1e-3));
        assertThat(Math.toDegrees(left.launchRad())).isCloseTo(-launchDegrees, within(1e-6));
        assertThat(left.besideMm()).isCloseTo(-1000 * besideM, within(1e-3));
        assertThat(Math.toDegrees(left.entryRad())).isCloseTo(entryDegrees, within(1e-5));
        Aim right = Aim.atSpeed(new Line(stimpFt, 0, -percent), 304.8 * ft, 500);
        assertThat(right.besideMm()).isCloseTo(1000 * besideM, within(1e-3));
        assertThat(Math.toDegrees(right.entryRad())).isCloseTo(-entryDegrees, within(1e-5));
    }

    /** A second opinion: the ball rolled step by step by another library, from the start to rest. */
    @ParameterizedTest
    @CsvSource({"10,0,2,3000,300", "10,1.5,-2,5000,450", "11,-2,1.5,4000,200", "9,3,0.5,2500,300", "12,-1,-2.5,6000,250",
            "10,2,0,3000,300", "10,-2,0,3000,300", "10,0,0,3000,300"})
    void aBallSetOffSoRollsOverTheHoleAndStopsAsFarPast(double stimpFt, double uphill, double side, double distanceMm,
                                                        double pastMm) {
        Line line = new Line(stimpFt, uphill, side);
        Aim aim = Aim.past(line, distanceMm, pastMm);
        Rolled rolled = roll(line, aim);
        assertThat(rolled.nearestMm).isLessThan(0.05);
        assertThat(rolled.speedThere).isCloseTo(aim.atHoleMmPerS(), within(0.5));
        assertThat(Math.hypot(rolled.restX, rolled.restY)).isCloseTo(pastMm, within(0.5));
        assertThat(aim.pastMm()).isCloseTo(pastMm, within(1e-6));

        Way way = Way.of(line, aim, 8);
        Way.Place hole = way.toHole().get(8);
        assertThat(Math.hypot(hole.alongMm(), hole.leftMm())).isLessThan(1e-3);
        assertThat(way.toHole().get(0).alongMm()).isCloseTo(-distanceMm, within(1e-6));
        assertThat(way.past().get(8).alongMm()).isCloseTo(rolled.restX, within(0.5));
        assertThat(way.past().get(8).leftMm()).isCloseTo(rolled.restY, within(0.5));
        assertThat(way.toHoleS()).isCloseTo(rolled.thereS, within(1e-3));
        assertThat(way.toRestS()).isCloseTo(rolled.restS, within(1e-2));
    }

    /** Computed independently (SciPy) from Penner's equation: level, 10 ft, a foot past: 3.415 in wide. */
    @Test
    void onTheLevelTheHoleIsAsWideAsPublished() {
        Aim aim = Aim.past(new Line(10, 0, 0), 3048, 304.8);
        assertThat(aim.effectiveWidthMm() / 25.4).isCloseTo(3.415, within(0.0006));
        assertThat(aim.besideMm()).isZero();
        assertThat(aim.share()).isCloseTo(aim.effectiveWidthMm() / (2 * Hole.RADIUS_MM), within(1e-12));
    }

    /**
     * Sheppard, Hurrion and Collinson 2016, quoted second-hand: to stop about a foot past on 3 degrees, 10 to 10.5 ft, a ball
     * enters at 0.66 m/s uphill and 0.29 downhill.
     */
    @Test
    void uphillABallMayComeFaster() {
        double percent = 100 * Math.tan(Math.toRadians(3));
        assertThat(Aim.past(new Line(10.25, percent, 0), 3048, 304.8).atHoleMmPerS()).isCloseTo(750, within(100.0));
        assertThat(Aim.past(new Line(10.25, -percent, 0), 3048, 304.8).atHoleMmPerS()).isCloseTo(310, within(60.0));
    }

    @Test
    void aCardSaysItInWords() {
        BreakCard card = BreakCard.of(new Line(10, 0, 2), 300, List.of(914.4, 3048.0));
        assertThat(card.inWords(Units.METRIC)).satisfiesExactly(
                near -> assertThat(near).matches(
                        "From 91 cm: aim \\d cm right of its centre, strike it as for a roll of 1\\.2 m on the level \\(1\\.1 m/s\\); at the hole it has 0\\.6 m/s and \\d\\d % of "
                                + "the hole's width\\."),
                far -> assertThat(far).startsWith("From 3.0 m: aim ").contains(" cm right of its centre, strike it as for "));
        assertThat(BreakCard.of(new Line(10, 1, 0), 300, List.of(3048.0)).inWords(Units.FEET).get(0))
                .startsWith("From 10 ft: aim at the hole, strike it as for a roll of 12 ft on the level (2.0 m/s);");
    }

    @Test
    void aGreenOnWhichNothingStopsHasNoCard() {
        assertThatThrownBy(() -> Aim.past(new Line(12, -5, 5), 3000, 300)).hasMessageContaining("never stops");
    }

    private record Rolled(double nearestMm, double speedThere, double thereS, double restX, double restY, double restS) {
    }

    /** Along the line x, to the left y, from the ball to the hole at the origin; 0.2 ms a step, the nearest approach taken. */
    private static Rolled roll(Line line, Aim aim) {
        double fallX = -line.uphillPercent();
        double fallY = line.sidePercent();
        double fall = Math.max(1e-12, line.fallPercent());
        double pull = Slope.pullMmPerS2(line.fallPercent());
        double friction = GreenSpeed.levelDecelerationMmPerS2(line.stimpFt())
                * Math.cos(Math.atan(line.fallPercent() / 100));
        OrdinaryDifferentialEquation motion = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 4;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double k = friction / Math.max(1e-9, Math.hypot(y[2], y[3]));
                return new double[] {y[2], y[3], pull * fallX / fall - k * y[2], pull * fallY / fall - k * y[3]};
            }
        };
        double[] state = {-aim.distanceMm(), 0, aim.startMmPerS() * Math.cos(aim.launchRad()),
                aim.startMmPerS() * Math.sin(aim.launchRad())};
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 0.01, 1e-8, 1e-8);
        double nearest = Double.POSITIVE_INFINITY;
        double speed = Double.NaN;
        double thereS = Double.NaN;
        double t = 0;
        while (Math.hypot(state[2], state[3]) > 1 && t < 60) {
            double before = Math.hypot(state[0], state[1]);
            double step = before < 30 ? 2e-5 : Math.hypot(state[2], state[3]) < 30 ? 2e-4 : 2e-3;
            state = integrator.integrate(motion, new ODEState(t, state), t + step).getPrimaryState();
            t += step;
            double now = Math.hypot(state[0], state[1]);
            if (now < nearest) {
                nearest = now;
                speed = Math.hypot(state[2], state[3]);
                thereS = t;
            }
        }
        return new Rolled(nearest, speed, thereS, state[0], state[1], t);
    }
}
