package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a ball that misses is found, and when. */
class MissesTest {
    private static final double LIMIT_MM = 914.4;
    private static final Rig STANDARD = PracticeRigs.STANDARD.level();

    @ParameterizedTest
    @ValueSource(doubles = {-270, -262, -255, -240, -230, -200, -100, -20, 0, 100, 300, 700, 860, 895, 914, 930, 945, 974,
        990, 1005, 1300, 2500})
    void aMissIsFoundWhereverItStops(double finishMm) {
        for (PracticeRigs rigs : new PracticeRigs[] {PracticeRigs.STANDARD, PracticeRigs.FULL}) {
            FakeBall ball = FakeBall.stoppingAt(rigs.level(), 1, -3000, finishMm);
            Script script = new Script(rigs.level());
            Attempt attempt = (rigs == PracticeRigs.FULL ? script.putts(ball) : script.rolls(ball)).played().only();

            isFound(ball, attempt);
            assertThat(attempt.timeNs() * 1e-9).isCloseTo(
                    rigs == PracticeRigs.FULL ? 1 : ball.blocksS(STANDARD.beams().get(0)), within(1e-8));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {950, 974, 1005, 1300, 2500})
    void aGateFindsWhatRunsPast(double finishMm) {
        for (PracticeRigs rigs : new PracticeRigs[] {PracticeRigs.GATE, PracticeRigs.STRUCK}) {
            FakeBall ball = FakeBall.stoppingAt(rigs.level(), 1, -3000, finishMm);
            Script script = new Script(rigs.level());
            Attempt attempt = (rigs == PracticeRigs.STRUCK ? script.putts(ball) : script.rolls(ball)).played().only();

            isFound(ball, attempt);
            assertThat(attempt.overshoots(LIMIT_MM)).isTrue();
        }
    }

    private static void isFound(FakeBall ball, Attempt attempt) {
        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.finishMm()).isCloseTo(ball.finishMm(), within(2 * attempt.finishSdMm()));
        assertThat(ball.finishMm()).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
        assertThat(attempt.finishSdMm()).as("a green's speed is known to 2 %% or so")
                .isLessThan(5 + 0.02 * (ball.finishMm() + 300));
        assertThat(attempt.rim()).isFalse();
        assertThat(attempt.resolvedNs() * 1e-9).isBetween(ball.stopsS() - 0.05, ball.stopsS() + 1);
        if (ball.finishMm() > 100) {
            assertThat(attempt.speedAtHoleMmPerS()).isCloseTo(ball.speedAtMmPerS(0), within(5.0));
        } else if (ball.finishMm() < -50) {
            assertThat(attempt.speedAtHoleMmPerS()).isNaN();
        }
    }

    @ParameterizedTest
    @CsvSource({"9, -1.5", "11, 2", "13, 0", "7, 1"})
    void theGreensSpeedAndSlopeAreTheLanesOwn(double stimpFt, double uphill) {
        Rig rig = PracticeRigs.STANDARD.on(stimpFt, uphill, 0);
        FakeBall ball = FakeBall.stoppingAt(rig, 1, -3000, 600);

        isFound(ball, new Script(rig).rolls(ball).played().only());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-200, 300, 930, 1300, 2500})
    void aReceiverThatChattersAtBothLimbsChangesNothing(double finishMm) {
        FakeBall ball = FakeBall.stoppingAt(STANDARD, 1, -3000, finishMm);

        isFound(ball, new Script(STANDARD).chattering().rolls(ball).played().only());
    }

    @Test
    void aBallThatStopsInTheFirstBeamIsSomewhereInIt() {
        for (double finishMm : new double[] {-315, -300, -285}) {
            Attempt attempt = new Script(STANDARD).rolls(FakeBall.stoppingAt(STANDARD, 1, -3000, finishMm)).played().only();

            assertThat(attempt.holed()).isFalse();
            assertThat(finishMm).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
            assertThat(attempt.betweenLowMm()).isGreaterThan(-322);
            assertThat(attempt.betweenHighMm()).isLessThan(-278);
        }
    }

    @Test
    void aBallThatStopsInABeamAndIsPickedUpCountsOnce() {
        for (double finishMm : new double[] {-300, -240, 914, 974}) {
            FakeBall ball = FakeBall.stoppingAt(STANDARD, 1, -3000, finishMm);
            Attempt attempt = new Script(STANDARD).rolls(ball.pickedUpAt(ball.stopsS() + 6)).played().only();

            assertThat(finishMm).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-300, -240, 914, 974})
    void aBallThatLiesInABeamDoesNotHideTheNext(double lyingMm) {
        FakeBall lying = FakeBall.stoppingAt(STANDARD, 1, -3000, lyingMm);
        FakeBall next = FakeBall.stoppingAt(STANDARD, 20, -3000, 1400);

        Played played = new Script(STANDARD).rolls(lying).rolls(next).played();

        assertThat(played.attempts).hasSize(2);
        assertThat(played.attempts.get(1).finishMm()).isCloseTo(1400, within(20.0));
    }

    @Test
    void aBallShortOfTheFirstBeamIsNoOnesToKnow() {
        assertThat(new Script(STANDARD).rolls(FakeBall.stoppingAt(STANDARD, 1, -3000, -330)).played().attempts).isEmpty();
    }

    /** What was not blocked counts: without that, half of the interval would lie past the beam. */
    @Test
    void aBallThatDidNotReachTheGateIsShortOfIt() {
        Attempt attempt = new Script(STANDARD).rolls(FakeBall.stoppingAt(STANDARD, 1, -3000, 885)).played().only();

        assertThat(attempt.betweenHighMm()).isLessThan(914.4 - 21);
        assertThat(attempt.overshoots(LIMIT_MM)).isFalse();
        assertThat(885.0).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
    }

    @ParameterizedTest
    @EnumSource(value = PracticeRigs.class, names = {"STANDARD", "FULL"})
    void ofTwoBallsUnderWayEachIsFoundWhereItStops(PracticeRigs rigs) {
        Rig rig = rigs.level();
        for (double apartS : new double[] {0.4, 1.0, 2.0}) {
            FakeBall one = FakeBall.stoppingAt(rig, 1, -3000, 700);
            FakeBall other = FakeBall.stoppingAt(rig, 1 + apartS, -3000, 1200);
            Script script = new Script(rig);
            Played played = (rigs == PracticeRigs.FULL ? script.putts(one).putts(other) : script.rolls(one).rolls(other))
                    .played();

            assertThat(played.attempts).hasSize(2);
            isFound(one, played.attempts.get(0));
            isFound(other, played.attempts.get(1));
        }
    }

    @Test
    void theGreensSpeedIsLearntAsTheDayGoes() {
        Rig rig = PracticeRigs.FULL.level();
        double slows = FakeBall.decelerationMmPerS2(rig) * 10 / 10.3;
        Script script = new Script(rig);
        for (int i = 0; i < 40; i++) {
            double finishMm = 30.0 * i;
            double speed = Math.sqrt(2 * slows * (finishMm + 3000));
            FakeBall ball = new FakeBall(1 + 12 * i, -3000, speed, slows, Double.POSITIVE_INFINITY, 11 + 12 * i);
            script.putts(ball);
        }
        Tracker tracker = new Tracker(rig, new Played());
        assertThat(tracker.stimpFt()).isEqualTo(10);
        double doubt = tracker.stimpSdFt();

        script.edges(tracker);
        tracker.end();

        assertThat(tracker.stimpFt()).isCloseTo(10.3, within(0.03));
        assertThat(tracker.stimpSdFt()).isLessThan(doubt / 3);
    }
}
