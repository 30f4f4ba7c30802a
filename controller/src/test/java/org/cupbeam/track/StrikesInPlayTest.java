package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a strike sensor adds: putts that nothing else sees, and when each was struck. */
class StrikesInPlayTest {
    private static final Rig STRUCK = PracticeRigs.STRUCK.level();
    private static final double STRUCK_FIRST_MM = 914.4;

    @ParameterizedTest
    @EnumSource(value = PracticeRigs.class, names = {"STRUCK", "FULL"})
    void aStrikeOfWhichNothingComesIsAMissShortOfTheFirstBeam(PracticeRigs rigs) {
        Rig rig = rigs.level();
        Attempt attempt = new Script(rig).struck(2).played().only();

        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.timeNs()).isEqualTo(2_000_000_000L);
        assertThat(attempt.finishMm()).isNaN();
        assertThat(attempt.betweenLowMm()).isNaN();
        double firstMm = rig.beams().get(0).positionMm();
        assertThat(attempt.betweenHighMm()).isBetween(firstMm - 22, firstMm);
        assertThat(attempt.overshoots(rig.limitMm())).isFalse();
        assertThat((attempt.resolvedNs() - attempt.timeNs()) * 1e-9).as("the time that a ball can roll, and at most 1 s")
                .isBetween(rollS(rig, 10_000), rollS(rig, 14_000) + 1);
    }

    private static double rollS(Rig rig, double mm) {
        return Math.sqrt(2 * mm / FakeBall.decelerationMmPerS2(rig));
    }

    @Test
    void aMissInsideTheLimitIsLoggedWithItsBounds() {
        Attempt attempt = new Script(STRUCK).putts(FakeBall.stoppingAt(STRUCK, 1, -3000, 500)).played().only();

        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.timeNs()).isEqualTo(1_000_000_000L);
        assertThat(attempt.betweenHighMm()).isBetween(STRUCK_FIRST_MM - 22, STRUCK_FIRST_MM);
    }

    @ParameterizedTest
    @EnumSource(value = PracticeRigs.class, names = {"STRUCK", "FULL"})
    void echoesOfAStrikeAreNoFurtherPutts(PracticeRigs rigs) {
        FakeBall ball = FakeBall.stoppingAt(rigs.level(), 1, -3000, 1300);

        Attempt attempt = new Script(rigs.level()).putts(ball).struck(1.012).struck(1.05).struck(1.14).played().only();

        assertThat(attempt.timeNs()).isEqualTo(1_000_000_000L);
        assertThat(attempt.finishMm()).isCloseTo(1300, within(15.0));
    }

    @ParameterizedTest
    @EnumSource(value = PracticeRigs.class, names = {"STRUCK", "FULL"})
    void somethingSetDownOnTheSensorOrASpikeIsNoStrike(PracticeRigs rigs) {
        assertThat(new Script(rigs.level()).blocks("strike", 1, 2.5).blocks("strike", 8, 8.0001).played().attempts)
                .isEmpty();
    }

    @Test
    void eachOfManyPuttsKeepsItsOwnStrike() {
        Rig rig = PracticeRigs.FULL.level();
        double[] finishes = {-400, 300, 1300, -600, 100, 2000};
        Script script = new Script(rig);
        for (int i = 0; i < finishes.length; i++) {
            FakeBall ball = FakeBall.stoppingAt(rig, 10 + 9 * i, -3000, finishes[i]);
            script.putts(ball.pickedUpAt(ball.stopsS() + 3));
        }

        Played played = script.played();

        assertThat(played.attempts).extracting(each -> each.timeNs() * 1e-9)
                .containsExactlyInAnyOrder(10.0, 19.0, 28.0, 37.0, 46.0, 55.0);
        assertThat(played.attempts).filteredOn(each -> Double.isNaN(each.finishMm())).hasSize(2)
                .allMatch(each -> each.betweenHighMm() < -300);
    }

    @Test
    void aBallWithoutAStrikeIsABallAllTheSame() {
        Rig rig = PracticeRigs.FULL.level();

        Attempt attempt = new Script(rig).rolls(FakeBall.stoppingAt(rig, 1, -3000, 1300)).played().only();

        assertThat(attempt.finishMm()).isCloseTo(1300, within(15.0));
    }

    @Test
    void aStrikeThatWasThoughtAFeetsBallsIsStillAPutt() {
        Rig rig = PracticeRigs.FULL.level();

        Attempt attempt = new Script(rig).struck(1).blocks("before-1", 2.5, 2.55).played().only();

        assertThat(attempt.timeNs()).isEqualTo(1_000_000_000L);
        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.finishMm()).isNaN();
    }

    @Test
    void whereTheSensorHasFeltEveryPuttABallThatRollsWithoutAStrikeIsNone() {
        Rig rig = PracticeRigs.FULL.level();
        FakeBall rolled = FakeBall.stoppingAt(rig, 200, -3000, 300);
        Script holed = new Script(rig);
        Script missed = new Script(rig);
        for (int i = 0; i < 8; i++) {
            holed.putts(FakeBall.holedFor(rig, 10 * i, -3000, 500));
            missed.putts(FakeBall.stoppingAt(rig, 10 * i, -3000, 200 + i).pickedUpAt(10 * i + 8));
        }

        assertThat(holed.rolls(rolled).played().attempts).hasSize(8).allMatch(Attempt::holed);
        assertThat(missed.rolls(rolled).played().attempts).hasSize(8);
    }

    @Test
    void aDropTakesItsStrike() {
        Played played = new Script(STRUCK).putts(FakeBall.holedFor(STRUCK, 1, -3000, 400))
                .putts(FakeBall.holedFor(STRUCK, 12, -2000, 300)).played();

        assertThat(played.attempts).hasSize(2).allMatch(Attempt::holed);
        assertThat(played.attempts).extracting(Attempt::timeNs).containsExactly(1_000_000_000L, 12_000_000_000L);
    }
}
