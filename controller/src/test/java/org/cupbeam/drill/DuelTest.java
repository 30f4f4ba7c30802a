package org.cupbeam.drill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.cupbeam.drill.Happening.DuelEnded;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.junit.jupiter.api.Test;

/** Two players or more, each with a run of their own. */
class DuelTest {
    @Test
    void inTurnsByStationEachPlayerHasAVisit() {
        assertThat(order(Sketch.of(3, 3), "MMH H MH M", "A", "B")).isEqualTo("AAABAAB");
    }

    @Test
    void inTurnsByBallEachPlayerHasAnAttempt() {
        assertThat(order(Sketch.of(3, 3).turns(Turns.BALL), "MMHHM", "A", "B")).isEqualTo("ABABA");
        assertThat(order(Sketch.of(3, 3).turns(Turns.BALL), "MMHHMM", "A", "B", "C")).isEqualTo("ABCABC");
    }

    @Test
    void aStepBackEndsTheVisitAndSoTheTurn() {
        Sketch sketch = Sketch.of(3, 3).penalty(Penalty.BACK_ONE);
        assertThat(order(sketch, "H H O M", "A", "B")).isEqualTo("ABAB");
        assertThat(order(sketch, "O M", "A", "B")).as("at the first station the visit goes on").isEqualTo("AA");
    }

    @Test
    void playersWhoseRunHasEndedArePassedOver() {
        Sketch sketch = Sketch.of(5, 1);
        assertThat(order(sketch, "H M H H H", "A", "B", "C")).as("B is out").isEqualTo("ABCAC");
        assertThat(order(sketch.turns(Turns.BALL), "HMHHH", "A", "B", "C")).isEqualTo("ABCAC");
    }

    @Test
    void aDuelIsOverWhenAllRunsHaveEnded() {
        List<Happening> happenings = Sketch.of(3, 1).happenings("M M", "A", "B");
        assertThat(happenings).element(3).isEqualTo(new RunEnded("B", 1, Sketch.of(3, 1).run("M")));
        assertThat(happenings).last().isEqualTo(new DuelEnded(1, java.util.Optional.empty()));
    }

    @Test
    void aDuelIsOverWhenTheOneLeftInPlayHasClearedMoreThanEachOther() {
        assertThat(tale(Sketch.of(3, 1), "H M", "A", "B")).isEqualTo("A B B:out-of-balls A:duel winner A");
        assertThat(tale(Sketch.of(3, 1), "H H M M H", "A", "B", "C"))
                .isEqualTo("A B C C:out-of-balls A A:out-of-balls B B:duel winner B");
    }

    @Test
    void theOneLeftInPlayPlaysOnWhileNotAhead() {
        assertThat(tale(Sketch.of(3, 2), "MM M H", "A", "B")).isEqualTo("A A A:out-of-balls B B B:duel winner B");
        assertThat(tale(Sketch.of(3, 1), "H H M H", "A", "B")).isEqualTo("A B A A:out-of-balls B B:duel winner B");
        assertThat(tale(Sketch.of(3, 1), "H H M M", "A", "B"))
                .isEqualTo("A B A A:out-of-balls B B:out-of-balls no winner");
    }

    @Test
    void whileTwoAreInPlayNobodyHasWon() {
        assertThat(Sketch.of(3, 1).play("H H M", "A", "B", "C").standing().over()).isFalse();
    }

    @Test
    void clearingTheLastStationLeavesTheOthersToCatchUp() {
        assertThat(tale(Sketch.of(1, 2), "H MH", "A", "B"))
                .isEqualTo("A A:cleared-all B B B:cleared-all winner A");
    }

    @Test
    void equalOnAllThreeScoresThereIsNoWinner() {
        assertThat(tale(Sketch.of(2, 2), "MM MM", "A", "B")).endsWith("no winner");
        assertThat(tale(Sketch.of(2, 2), "MM MO", "A", "B")).as("B's misses finished further").endsWith("winner A");
        assertThat(tale(Sketch.of(2, 2), "UU MO", "A", "B")).as("A's finishes are unknown").endsWith("winner B");
        assertThat(tale(Sketch.of(2, 1), "O M M", "A", "B", "C")).as("two share the best").endsWith("no winner");
    }

    @Test
    void theTurnCanBePassedAndTheVisitWaits() {
        Sketch sketch = Sketch.of(3, 3);
        assertThat(order(sketch, "M>H M", "A", "B")).isEqualTo("ABA");
        assertThat(sketch.play("M>H", "A", "B").standing().runs().get(0).visit()).isEqualTo(new Visit(1, 2, 1, 0));
        assertThat(sketch.play("MMM", "A", "B").standing().canPass()).as("A is out").isFalse();
        assertThat(sketch.happenings("MMM>", "A", "B")).last().isInstanceOf(RunEnded.class);
    }

    @Test
    void aDuelStoppedByHandGoesToTheScoreAsItStands() {
        assertThat(tale(Sketch.of(3, 3), "H MM.", "A", "B")).isEqualTo("A B B B:stopped A:stopped winner A");
    }

    @Test
    void theNextDuelBeginsInTheSameOrder() {
        assertThat(order(Sketch.of(3, 1), "MM HM M", "A", "B")).isEqualTo("ABABA");
    }

    private static String order(Sketch sketch, String score, String... players) {
        return sketch.happenings(score, players).stream().filter(Putted.class::isInstance)
                .map(each -> ((Putted) each).player()).collect(Collectors.joining());
    }

    private static String tale(Sketch sketch, String score, String... players) {
        return sketch.happenings(score, players).stream().map(DuelTest::told).collect(Collectors.joining(" "));
    }

    private static String told(Happening happening) {
        if (happening instanceof Putted putted) {
            return putted.player();
        }
        if (happening instanceof RunEnded ended) {
            return ended.player() + ":" + ended.run().endedBy().orElseThrow().word();
        }
        if (happening instanceof DuelEnded ended) {
            return ended.winner().map(winner -> "winner " + winner).orElse("no winner");
        }
        return happening.toString();
    }
}
