package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class VerdictTest {
    private static final double NOWHERE = Double.POSITIVE_INFINITY;
    private static final Rig RIG = new RigSketch().single(Kind.CUP).pair(-300).pair(900).rig();

    private final Lay lay = new Lay(RIG);
    private final LaneBelief lane = new LaneBelief(RIG);
    private final Verdict verdict = new Verdict(lay, lane);

    /** Against the normal density integrated numerically (commons-math) over what is left of it. */
    @ParameterizedTest
    @ValueSource(doubles = {1.9, 1, 0, -1, -2, -3, -4.5})
    void aBallThatDidNotReachTheNextBeamStoppedShortOfIt(double sds) {
        FinishEstimator free = estimateOf(ballFor(500));
        double mean = free.finishMm();
        double sd = free.finishSdMm();
        double shortOfMm = mean + sds * sd;

        Attempt attempt = verdict.missed(ballFor(500), 9, shortOfMm);

        isLeftOf(mean, sd, lay.departureMm(1), shortOfMm, attempt);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-217.5, -218, -212})
    void aBallThatLeftABeamIsPastIt(double finishMm) {
        FinishEstimator free = estimateOf(ballFor(finishMm));

        Attempt attempt = verdict.missed(ballFor(finishMm), 9, NOWHERE);

        isLeftOf(free.finishMm(), free.finishSdMm(), lay.departureMm(1), free.finishMm() + 40 * free.finishSdMm(),
                attempt);
    }

    @Test
    void aBallThatReachedABeamAndDidNotLeaveItIsInIt() {
        FakeBall fake = FakeBall.stoppingAt(RIG, 0, -3000, -245);
        Ball ball = ballFor(-245);
        assertThat(ball.crossings().count()).isOne();
        ball.arrive(1, Math.round(fake.timeAtS(lay.arrivalMm(1)) * 1e9));
        FinishEstimator free = estimateOf(ball);

        Attempt attempt = verdict.missed(ball, 9, NOWHERE);

        assertThat(attempt.finishMm()).isCloseTo(free.finishMm(), within(free.finishSdMm()));
        assertThat(attempt.betweenLowMm()).isGreaterThanOrEqualTo(lay.arrivalMm(1));
        assertThat(attempt.betweenHighMm()).isLessThanOrEqualTo(lay.departureMm(1));
    }

    @Test
    void aBoundFarBeyondTheEstimateChangesNothing() {
        FinishEstimator free = estimateOf(ballFor(500));

        Attempt attempt = verdict.missed(ballFor(500), 9, free.finishMm() + 5 * free.finishSdMm());

        assertThat(attempt.finishMm()).isEqualTo(free.finishMm());
        assertThat(attempt.finishSdMm()).isEqualTo(free.finishSdMm());
        assertThat(attempt.betweenLowMm()).isCloseTo(free.finishMm() - 1.96 * free.finishSdMm(), within(0.01));
        assertThat(attempt.betweenHighMm()).isCloseTo(free.finishMm() + 1.96 * free.finishSdMm(), within(0.01));
    }

    @Test
    void anEstimateThatTheBeamsRefuteIsNotToldButItsBoundsAre() {
        Attempt attempt = verdict.missed(ballFor(1500), 9, 878);

        assertThat(attempt.finishMm()).isNaN();
        assertThat(attempt.finishSdMm()).isNaN();
        assertThat(attempt.betweenLowMm()).isEqualTo(lay.departureMm(1));
        assertThat(attempt.betweenHighMm()).isEqualTo(878);
        assertThat(attempt.paceMm()).isCloseTo(1500, within(0.1));
        assertThat(attempt.rim()).as("it came to the hole, and did not roll on").isTrue();
    }

    @Test
    void boundsThatContradictEachOtherAreNoReasonToFail() {
        Attempt attempt = verdict.missed(ballFor(-200), 9, lay.departureMm(1) - 5);

        assertThat(attempt.finishMm()).isCloseTo(-200, within(1.0));
    }

    @Test
    void aHoledBallHasAPaceAndASpeedAndNoFinish() {
        Attempt attempt = verdict.holed(ballFor(500), 9);

        assertThat(attempt.holed()).isTrue();
        assertThat(attempt.paceMm()).isCloseTo(500, within(0.1));
        assertThat(attempt.speedAtHoleMmPerS())
                .isCloseTo(FakeBall.stoppingAt(RIG, 0, -3000, 500).speedAtMmPerS(0), within(0.1));
        assertThat(attempt.finishMm()).isNaN();
        assertThat(attempt.betweenLowMm()).isNaN();
    }

    @Test
    void aBallInTheFirstBeamIsAnywhereInItEquallyLikely() {
        Attempt attempt = Verdict.missedIn(1, 2, -300, 21);

        assertThat(attempt.finishMm()).isEqualTo(-300);
        assertThat(attempt.finishSdMm()).as("of a uniform distribution").isCloseTo(42 / Math.sqrt(12), within(1e-9));
        assertThat(attempt.betweenHighMm() - attempt.betweenLowMm()).isCloseTo(0.95 * 42, within(1e-9));
    }

    @Test
    void ofAMissThatNothingSawOnlyTheBoundIsKnown() {
        Attempt attempt = Verdict.missedUnseen(1, 2, 878);

        assertThat(attempt.overshoots(914.4)).isFalse();
        assertThat(attempt.betweenLowMm()).isNaN();
        assertThat(attempt.betweenHighMm()).isEqualTo(878);
        assertThat(attempt.finishMm()).isNaN();
        assertThat(attempt.paceMm()).isNaN();
    }

    private static void isLeftOf(double mean, double sd, double low, double high, Attempt attempt) {
        double from = Math.max(low, mean - 12 * sd);
        UnivariateFunction density = mm -> Math.exp(-(mm - mean) * (mm - mean) / (2 * sd * sd)
                + Math.pow(Math.max(0, Math.max(from - mean, mean - high)) / sd, 2) / 2);
        double whole = integral(density, from, high);
        double expected = integral(mm -> mm * density.value(mm), from, high) / whole;
        double spread = Math.sqrt(integral(mm -> Math.pow(mm - expected, 2) * density.value(mm), from, high) / whole);
        assertThat(attempt.finishMm()).isCloseTo(expected, within(1e-3 * spread));
        assertThat(attempt.finishSdMm()).isCloseTo(spread, within(1e-3 * spread));
        assertThat(attempt.betweenLowMm()).isCloseTo(quantile(density, whole, from, high, 0.025), within(0.002 * spread));
        assertThat(attempt.betweenHighMm()).isCloseTo(quantile(density, whole, from, high, 0.975), within(0.002 * spread));
    }

    private static double quantile(UnivariateFunction density, double whole, double low, double high, double p) {
        return new BrentSolver(1e-9).solve(200, mm -> mm <= low ? -p : integral(density, low, mm) / whole - p, low, high);
    }

    private static double integral(UnivariateFunction f, double from, double to) {
        return new IterativeLegendreGaussIntegrator(24, 1e-9, 1e-12).integrate(100_000, f, from, to);
    }

    private FinishEstimator estimateOf(Ball ball) {
        FinishEstimator estimator = new FinishEstimator(lay);
        estimator.estimate(ball.crossings(), 0, ball.crossings().count(), ball.approach(), lane);
        return estimator;
    }

    /** Seen by the pair before the hole, or its first beam, and by nothing after. */
    private Ball ballFor(double finishMm) {
        return Seen.exactly(RIG).ball(FakeBall.stoppingAt(RIG, 0, -3000, finishMm).asFarAs(200), lane);
    }
}
