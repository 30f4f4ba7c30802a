package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What makes a putt of a drop into the cup, and what does not. */
class DropsTest {
    private static final Rig GATE = PracticeRigs.GATE.level();
    private static final Rig STANDARD = PracticeRigs.STANDARD.level();

    @ParameterizedTest
    @ValueSource(doubles = {20, 200, 600, 1200, 2000})
    void aBallOnItsWayThatDropsIsHoledAndItsPaceIsKnown(double paceMm) {
        FakeBall ball = FakeBall.holedFor(STANDARD, 1, -3000, paceMm);

        Attempt attempt = new Script(STANDARD).rolls(ball).played().only();

        assertThat(attempt.holed()).isTrue();
        assertThat(attempt.finishMm()).isNaN();
        assertThat(attempt.paceMm()).isCloseTo(paceMm, within(1.0));
        assertThat(attempt.speedAtHoleMmPerS()).isCloseTo(ball.speedAtMmPerS(0), within(1.0));
        assertThat(attempt.resolvedNs() * 1e-9).as("at once")
                .isBetween(ball.timeAtS(0) + Script.FALL_S, ball.timeAtS(0) + Script.FALL_S + 0.03);
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void aHoledPuttIsOneAttemptOnEveryRig(PracticeRigs rigs) {
        boolean strikes = rigs == PracticeRigs.STRUCK || rigs == PracticeRigs.FULL;
        FakeBall ball = FakeBall.holedFor(rigs.level(), 1, -3000, 400);

        Script script = new Script(rigs.level());
        Attempt attempt = (strikes ? script.putts(ball) : script.rolls(ball)).played().only();

        assertThat(attempt.holed()).isTrue();
        double droppedS = ball.timeAtS(0) + Script.FALL_S;
        assertThat(attempt.resolvedNs() * 1e-9).isBetween(droppedS, droppedS + 1);
        if (strikes) {
            assertThat(attempt.timeNs()).isEqualTo(1_000_000_000);
        }
    }

    @ParameterizedTest
    @EnumSource(value = PracticeRigs.class, names = {"STANDARD", "FULL"})
    void aDropWithNoBallOnItsWayIsNone(PracticeRigs rigs) {
        assertThat(new Script(rigs.level()).drops(2).played().attempts).isEmpty();
    }

    @Test
    void aDropTooLateForTheBallIsNotItsOwn() {
        FakeBall ball = FakeBall.stoppingAt(STANDARD, 1, -3000, 300);

        Played played = new Script(STANDARD).rolls(ball).drops(ball.stopsS() + 4).played();

        assertThat(played.only().holed()).isFalse();
    }

    @Test
    void aDropBeforeTheBallCanBeThereIsNotItsOwn() {
        FakeBall ball = FakeBall.stoppingAt(STANDARD, 1, -3000, 300);

        Played played = new Script(STANDARD).rolls(ball).drops(ball.timeAtS(-100)).played();

        assertThat(played.only().holed()).isFalse();
    }

    @Test
    void aShoeThatStepsOverThePairForetellsNoDrop() {
        for (double dropS : new double[] {0.4, 0.6, 0.8, 1.2}) {
            Script script = new Script(STANDARD).blocks("before-1", 2, 2.08).blocks("before-2", 2.05, 2.14);
            assertThat(script.drops(2 + dropS).played().attempts).as("%s s later", dropS).isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-300, -240})
    void aBallThatLiesInABeamDoesNotHideOneThatIsHoled(double lyingMm) {
        Played played = new Script(STANDARD).rolls(FakeBall.stoppingAt(STANDARD, 1, -3000, lyingMm))
                .rolls(FakeBall.holedFor(STANDARD, 20, -3000, 500)).played();

        assertThat(played.attempts).extracting(Attempt::holed).containsExactly(false, true);
    }

    @Test
    void aBallThatCannotReachTheHoleDoesNotDrop() {
        FakeBall ball = FakeBall.stoppingAt(STANDARD, 1, -3000, -180);

        Attempt attempt = new Script(STANDARD).rolls(ball).drops(ball.stopsS()).played().only();

        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.finishMm()).isCloseTo(-180, within(3.0));
    }

    @Test
    void aBallThatHangsOnTheLipMayStillDrop() {
        FakeBall ball = FakeBall.stoppingAt(STANDARD, 1, -3000, -40);

        assertThat(new Script(STANDARD).rolls(ball).drops(ball.stopsS() + 0.3).played().only().holed()).isTrue();
    }

    @ParameterizedTest
    @EnumSource(value = PracticeRigs.class, names = {"GATE", "STRUCK"})
    void withoutBeamsBeforeTheHoleAnyCleanDropIsAMadePutt(PracticeRigs rigs) {
        Played played = new Script(rigs.level()).drops(2).drops(7).played();

        assertThat(played.attempts).hasSize(2).allMatch(Attempt::holed);
        assertThat(played.attempts.get(0).timeNs()).isEqualTo(2_000_000_000);
        assertThat(played.attempts).allMatch(each -> each.resolvedNs() - each.timeNs() <= 1_000_000_000);
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void aHandInTheCupIsNone(PracticeRigs rigs) {
        for (double forS : new double[] {0.17, 0.4, 1.5}) {
            assertThat(new Script(rigs.level()).hand(2, forS).hand(6, forS).played().attempts).as("%s s", forS).isEmpty();
        }
    }

    @Test
    void aHandThatFetchesTheBallDoesNotUndoTheDrop() {
        Played played = new Script(GATE).drops(2).hand(3, 0.8).drops(10).hand(10.8, 0.8).played();

        assertThat(played.attempts).hasSize(2).allMatch(Attempt::holed);
    }

    @Test
    void aSpikeInTheCupIsNone() {
        assertThat(new Script(GATE).blocks("cup", 2, 2.0005).blocks("cup", 3, 3.0001).played().attempts).isEmpty();
    }

    @Test
    void ofTwoBallsUnderWayTheOneThatIsExpectedDrops() {
        FakeBall misses = FakeBall.stoppingAt(STANDARD, 1, -3000, 500);
        FakeBall drops = FakeBall.holedFor(STANDARD, 2, -3000, 500);

        Played played = new Script(STANDARD).rolls(misses).rolls(drops).played();

        assertThat(played.attempts).hasSize(2);
        assertThat(played.attempts).filteredOn(Attempt::holed).singleElement()
                .satisfies(each -> assertThat(each.timeNs() * 1e-9).isGreaterThan(3));
    }

    @Test
    void twoBallsThatDropSoonAfterEachOtherAreTwo() {
        Played played = new Script(STANDARD).rolls(FakeBall.holedFor(STANDARD, 1, -3000, 500))
                .rolls(FakeBall.holedFor(STANDARD, 1.5, -3000, 500)).played();

        assertThat(played.attempts).hasSize(2).allMatch(Attempt::holed);
    }
}
