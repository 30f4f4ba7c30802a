package org.cupbeam.drill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** The rules of one player's run; scores read H holed, M missed short, O overshot. */
class RunTest {
    @Test
    void aRunBeginsAtTheFirstStationWithAllBalls() {
        Run run = Sketch.of(3, 6).run("");
        assertThat(run.station()).isEqualTo(1);
        assertThat(run.visit()).isEqualTo(new Visit(1, 6, 0, 0));
        assertThat(run.ended()).isFalse();
    }

    @Test
    void everyAttemptUsesABall() {
        assertThat(Sketch.of(3, 6).clearedBy(3).run("MH").visit()).isEqualTo(new Visit(1, 4, 2, 1));
    }

    @Test
    void aHoledBallClearsTheStationAndTheNextVisitStartsFull() {
        Run run = Sketch.of(3, 6).run("MMH");
        assertThat(run.station()).isEqualTo(2);
        assertThat(run.cleared()).isEqualTo(1);
        assertThat(run.visit()).isEqualTo(new Visit(2, 6, 0, 0));
    }

    @Test
    void whereMoreMustBeHoledTheyMustBeHoledInOneVisit() {
        Sketch sketch = Sketch.of(3, 4).clearedBy(2).penalty(Penalty.BACK_ONE);
        assertThat(sketch.run("HMH").station()).isEqualTo(2);
        assertThat(sketch.run("HH HO").station()).isEqualTo(1);
        assertThat(sketch.run("HH HO H").station()).as("what an earlier visit holed no longer counts").isEqualTo(1);
    }

    @Test
    void clearingTheLastStationEndsTheRun() {
        Run run = Sketch.of(2, 3).run("HMH");
        assertThat(run.endedBy()).contains(EndedBy.CLEARED_ALL);
        assertThat(run.cleared()).isEqualTo(2);
        assertThat(run.station()).isEqualTo(2);
    }

    @Test
    void theLastBallMayStillClear() {
        assertThat(Sketch.of(2, 3).run("MMH").ended()).isFalse();
    }

    @Test
    void withoutABallLeftAndNotClearedTheRunEnds() {
        assertThat(Sketch.of(2, 3).run("MM").ended()).isFalse();
        assertThat(Sketch.of(2, 3).run("MMM").endedBy()).contains(EndedBy.OUT_OF_BALLS);
    }

    @Test
    void aRunGoesOnUntilItsBallsAreOutEvenWhereItCanNoLongerClear() {
        assertThat(Sketch.of(2, 3).clearedBy(3).run("MH").ended()).isFalse();
        assertThat(Sketch.of(2, 3).clearedBy(3).run("MHH").endedBy()).contains(EndedBy.OUT_OF_BALLS);
    }

    @Test
    void ofBallsForTheWholeRunAMissedOneIsGoneAndAHoledOneComesBack() {
        Run run = Sketch.of(9, 5).wholeRun().run("MMH");
        assertThat(run.balls()).isEqualTo(3);
        assertThat(run.visit().left()).as("the next visit starts with all that are left").isEqualTo(3);
    }

    @Test
    void ofBallsForTheWholeRunEachIsPuttedAtMostOnceInAVisit() {
        Sketch sketch = Sketch.of(9, 3).wholeRun().clearedBy(2);
        assertThat(sketch.run("HMH").balls()).isEqualTo(2);
        assertThat(sketch.run("HMH HM").endedBy()).as("the holed ball is not back before the next visit")
                .contains(EndedBy.OUT_OF_BALLS);
    }

    @Test
    void tooFewBallsLeftToClearArePuttedAllTheSame() {
        Sketch sketch = Sketch.of(9, 3).wholeRun().clearedBy(2);
        assertThat(sketch.run("MHH MH").endedBy()).contains(EndedBy.OUT_OF_BALLS);
    }

    @Test
    void anOvershootWithoutPenaltyCostsItsBallOnly() {
        assertThat(Sketch.of(2, 3).run("O").visit()).isEqualTo(new Visit(1, 2, 1, 0));
    }

    @Test
    void loseBallTakesOneOfTheBallsStillToPutt() {
        Sketch sketch = Sketch.of(2, 4).penalty(Penalty.LOSE_BALL);
        assertThat(sketch.run("O").visit()).isEqualTo(new Visit(1, 2, 1, 0));
        assertThat(sketch.run("M").visit()).isEqualTo(new Visit(1, 3, 1, 0));
        assertThat(sketch.run("O H").visit().left()).as("at every station anew").isEqualTo(4);
    }

    @Test
    void loseBallTakesItFromTheWholeRunWhereTheBallsAreTheRuns() {
        Run run = Sketch.of(9, 5).wholeRun().penalty(Penalty.LOSE_BALL).run("O");
        assertThat(run.balls()).isEqualTo(3);
        assertThat(run.visit().left()).isEqualTo(3);
    }

    @Test
    void loseBallEndsTheRunWhereItTakesTheLastToPutt() {
        Sketch sketch = Sketch.of(2, 2).penalty(Penalty.LOSE_BALL);
        assertThat(sketch.run("O").endedBy()).contains(EndedBy.OUT_OF_BALLS);
        assertThat(sketch.run("O").visit().left()).isZero();
        assertThat(sketch.wholeRun().run("O").balls()).isZero();
    }

    @Test
    void aHoledBallOfTheVisitDoesNotSaveAWholeRunThatHasNoneToPutt() {
        Run run = Sketch.of(9, 3).wholeRun().clearedBy(2).penalty(Penalty.LOSE_BALL).run("HO");
        assertThat(run.endedBy()).contains(EndedBy.OUT_OF_BALLS);
        assertThat(run.balls()).as("the holed one is still the run's").isEqualTo(1);
    }

    @Test
    void backOneIsANewVisitToTheStationBefore() {
        Run run = Sketch.of(3, 3).penalty(Penalty.BACK_ONE).run("HH MO");
        assertThat(run.station()).isEqualTo(2);
        assertThat(run.visit()).isEqualTo(new Visit(4, 3, 0, 0));
    }

    @Test
    void aStepBackTakesNoClearedStationAway() {
        Sketch sketch = Sketch.of(4, 3).penalty(Penalty.BACK_ONE);
        assertThat(sketch.run("HH O").cleared()).isEqualTo(2);
        assertThat(sketch.run("HH O H").cleared()).as("cleared again counts once").isEqualTo(2);
        assertThat(sketch.run("HH O HH").cleared()).isEqualTo(3);
    }

    @Test
    void backOneStartsWithWhatTheWholeRunHasLeft() {
        Run run = Sketch.of(9, 5).wholeRun().penalty(Penalty.BACK_ONE).run("MH MO");
        assertThat(run.station()).isEqualTo(1);
        assertThat(run.visit().left()).isEqualTo(2);
    }

    @Test
    void backOneAtTheFirstStationIsNothingMoreThanABall() {
        Run run = Sketch.of(3, 3).penalty(Penalty.BACK_ONE).run("O");
        assertThat(run.visit()).as("the same visit goes on").isEqualTo(new Visit(1, 2, 1, 0));
    }

    @Test
    void endRunEndsItWhileBallsAreLeft() {
        Run run = Sketch.of(3, 3).penalty(Penalty.END_RUN).run("HO");
        assertThat(run.endedBy()).contains(EndedBy.OVERSHOOT);
        assertThat(run.cleared()).isEqualTo(1);
        assertThat(run.visit().left()).isEqualTo(2);
    }

    @Test
    void aMissOfTheLastBallEndsTheRunWhateverThePenalty() {
        for (Penalty penalty : Penalty.values()) {
            assertThat(Sketch.of(3, 2).penalty(penalty).run("H MO").endedBy()).as(penalty.word())
                    .contains(EndedBy.OUT_OF_BALLS);
        }
    }

    @Test
    void onlyAFinishBeyondTheLimitOvershoots() {
        Drill drill = Sketch.of(3, 3).penalty(Penalty.END_RUN).drill();
        assertThat(Run.begin(drill).after(drill, 500, Putt.missedAt(500)).overshot()).isFalse();
        assertThat(Run.begin(drill).after(drill, 500, Putt.missedAt(500.1)).overshot()).isTrue();
        assertThat(Run.begin(drill).after(drill, 500, Putt.missedAt(-3000)).overshot()).isFalse();
    }

    @Test
    void aRunThatStepsBackForeverIsOutOfBallsInTheEnd() {
        Drill drill = Sketch.of(2, 2).penalty(Penalty.BACK_ONE).drill();
        Run run = Run.begin(drill);
        while (!run.ended()) {
            run = run.after(drill, 500, run.station() == 1 ? Putt.sunk() : Putt.missedAt(600)).run();
        }
        assertThat(run.endedBy()).contains(EndedBy.OUT_OF_BALLS);
        assertThat(run.tally().attempts()).isEqualTo(Run.ATTEMPTS_MAX);
    }

    @Test
    void anEndedRunTakesNoAttempt() {
        Drill drill = Sketch.of(1, 1).drill();
        Run ended = Run.begin(drill).after(drill, 500, Putt.sunk()).run();
        assertThatThrownBy(() -> ended.after(drill, 500, Putt.sunk())).hasMessageContaining("cleared-all");
    }
}
