package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A ball that touches the rim and stays out rolls on slower than it came. */
class RimTest {
    private static final Rig FULL = PracticeRigs.FULL.level();
    private static final Rig STANDARD = PracticeRigs.STANDARD.level();
    private static final double PACE_MM = 1500;

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.6, 0.8, 0.9, 0.95})
    void itIsFoundWhereItThenStopsAndItsPaceIsThatOfItsApproach(double keeps) {
        FakeBall coming = coming(FULL, 1);
        FakeBall going = going(FULL, coming, keeps);

        Attempt attempt = new Script(FULL).putts(coming.asFarAs(1)).rolls(going).played().only();

        isFound(going, attempt);
        assertThat(attempt.finishMm()).isCloseTo(going.finishMm(), within(1.0));
        assertThat(attempt.paceMm()).as("had there been no hole").isCloseTo(PACE_MM, within(1.0));
        assertThat(attempt.speedAtHoleMmPerS()).isCloseTo(coming.speedAtMmPerS(0), within(5.0));
    }

    /** So lightly that the beams just behind the hole cannot tell, and those further on can. */
    @ParameterizedTest
    @ValueSource(doubles = {0.96, 0.97, 0.98})
    void aLightTouchIsToldByTheBeamsFurtherOn(double keeps) {
        FakeBall coming = coming(FULL, 1);
        FakeBall going = going(FULL, coming, keeps);

        Attempt attempt = new Script(FULL).putts(coming.asFarAs(1)).rolls(going).played().only();

        isFound(going, attempt);
        assertThat(attempt.finishMm()).isCloseTo(going.finishMm(), within(3.0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {148, 155})
    void itMayStopBetweenTheBeamsJustBehindTheHole(double finishMm) {
        FakeBall coming = coming(FULL, 1);
        FakeBall going = goingTo(FULL, coming, finishMm);

        Attempt attempt = new Script(FULL).putts(coming.asFarAs(1)).rolls(going).played().only();

        isFound(going, attempt);
        assertThat(attempt.finishMm()).isCloseTo(finishMm, within(5.0));
    }

    @Test
    void withoutBeamsJustBehindTheHoleOnlyItsBoundsAreKnown() {
        FakeBall coming = coming(STANDARD, 1);

        Attempt attempt = new Script(STANDARD).rolls(coming.asFarAs(1)).rolls(goingTo(STANDARD, coming, 300)).played()
                .only();

        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.rim()).isTrue();
        assertThat(attempt.finishMm()).isNaN();
        assertThat(300.0).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
        assertThat(attempt.overshoots(STANDARD.limitMm())).isFalse();
        assertThat(attempt.paceMm()).isCloseTo(PACE_MM, within(20.0));
    }

    @Test
    void aFootBehindTheHoleIsNotTheBallThatStayedOnTheLip() {
        FakeBall coming = coming(FULL, 1);
        double thereS = coming.timeAtS(0);

        Attempt attempt = new Script(FULL).putts(coming.asFarAs(1)).rolls(goingTo(FULL, coming, 60))
                .blocks("behind-1", thereS + 0.5, thereS + 0.6).played().only();

        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.rim()).isTrue();
        assertThat(attempt.finishMm()).isNaN();
        assertThat(60.0).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
    }

    private static void isFound(FakeBall going, Attempt attempt) {
        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.rim()).isTrue();
        assertThat(going.finishMm()).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
        assertThat(attempt.resolvedNs() * 1e-9).isBetween(going.stopsS() - 0.05, going.stopsS() + 1);
    }

    private static FakeBall coming(Rig rig, double atS) {
        return FakeBall.stoppingAt(rig, atS, -3000, PACE_MM);
    }

    /** From the hole's middle, with so much of its speed left. */
    private static FakeBall going(Rig rig, FakeBall coming, double keeps) {
        return new FakeBall(coming.timeAtS(0), 0.01, keeps * coming.speedAtMmPerS(0), FakeBall.decelerationMmPerS2(rig),
                Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    private static FakeBall goingTo(Rig rig, FakeBall coming, double finishMm) {
        return FakeBall.stoppingAt(rig, coming.timeAtS(0), 0.01, finishMm);
    }
}
