package org.cupbeam.drill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.cupbeam.drill.Happening.TakenBack;
import org.junit.jupiter.api.Test;

class PlayTest {
    @Test
    void anAttemptIsToldWithItsStationBallAndBallsLeft() {
        assertThat(Sketch.of(3, 6).happenings("MH M")).containsExactly(
                new Putted("A", 1, 1, 1, 1, 900, 1, 5, false, false),
                new Putted("A", 1, 2, 1, 1, 900, 2, 4, true, false),
                new Putted("A", 1, 3, 2, 2, 1800, 1, 5, false, false));
    }

    @Test
    void ballsLeftAreThoseAfterThePenaltyAndBeforeTheMove() {
        assertThat(Sketch.of(3, 6).penalty(Penalty.LOSE_BALL).happenings("O")).first()
                .isEqualTo(new Putted("A", 1, 1, 1, 1, 900, 1, 4, false, true));
        assertThat(Sketch.of(3, 6).penalty(Penalty.BACK_ONE).happenings("H O")).last()
                .isEqualTo(new Putted("A", 1, 2, 2, 2, 1800, 1, 5, false, true));
        assertThat(Sketch.of(3, 6).penalty(Penalty.END_RUN).happenings("O")).first()
                .isEqualTo(new Putted("A", 1, 1, 1, 1, 900, 1, 5, false, true));
    }

    @Test
    void theNextRunBeginsWithTheNextAttemptAfterTheEnd() {
        Sketch sketch = Sketch.of(3, 1);
        assertThat(sketch.play("HM").standing().over()).as("the result stays to be seen").isTrue();
        assertThat(sketch.happenings("HM H")).last().isEqualTo(new Putted("A", 2, 1, 1, 1, 900, 1, 0, true, false));
        assertThat(sketch.run("HM H").station()).isEqualTo(2);
    }

    @Test
    void aRunTellsWhyItEndedAfterItsLastAttempt() {
        List<Happening> happenings = Sketch.of(3, 1).happenings("HM");
        assertThat(happenings).hasSize(3).last().isEqualTo(new RunEnded("A", 1, Sketch.of(3, 1).run("HM")));
    }

    @Test
    void theDrillsLimitGoesBeforeTheRigs() {
        Drill own = Sketch.of(3, 3).drill();
        Drill none = new Drill("None", own.stations(), 3, Supply.EVERY_STATION, 1, OptionalDouble.empty(),
                Penalty.END_RUN, Turns.STATION);
        assertThat(Play.begin(own, List.of("A"), 914.4).limitMm()).isEqualTo(500);
        assertThat(Play.begin(none, List.of("A"), 914.4).limitMm()).isEqualTo(914.4);
    }

    @Test
    void takingBackRestoresTheStateExactly() {
        Sketch sketch = Sketch.of(3, 3).penalty(Penalty.BACK_ONE);
        assertThat(sketch.play("H O<")).isEqualTo(sketch.play("H"));
        assertThat(sketch.play("H O<<")).isEqualTo(sketch.play(""));
    }

    @Test
    void takingBackTheAttemptThatEndedARunReopensIt() {
        Sketch sketch = Sketch.of(3, 1);
        assertThat(sketch.play("HM<")).isEqualTo(sketch.play("H"));
        assertThat(sketch.happenings("HM<")).last()
                .isEqualTo(new TakenBack(new Putted("A", 1, 2, 2, 2, 1800, 1, 0, false, false)));
    }

    @Test
    void takingBackTheFirstAttemptOfTheNextRunShowsTheLastResultAgain() {
        Sketch sketch = Sketch.of(3, 1);
        assertThat(sketch.play("HM H<")).isEqualTo(sketch.play("HM"));
        assertThat(sketch.play("HM H<<")).isEqualTo(sketch.play("H"));
    }

    @Test
    void takingBackGoesBehindAPassAndAStop() {
        Sketch sketch = Sketch.of(3, 3);
        assertThat(sketch.play("M M><", "A", "B")).isEqualTo(sketch.play("M", "A", "B"));
        assertThat(sketch.play("M .<", "A", "B")).isEqualTo(sketch.play("", "A", "B"));
        assertThat(sketch.play(">M<", "A", "B")).as("but not before one").isEqualTo(sketch.play(">", "A", "B"));
    }

    @Test
    void withNothingToTakeBackNothingHappens() {
        assertThat(Sketch.of(3, 3).happenings("<")).isEmpty();
        assertThat(Sketch.of(3, 3).play("M<<")).isEqualTo(Sketch.of(3, 3).play(""));
    }

    @Test
    void aThousandAttemptsInARowCanBeTakenBack() {
        Sketch sketch = Sketch.of(1, 1);
        Play longer = sketch.play("M".repeat(Play.TAKE_BACKS_MAX + 5));
        Play back = longer.after(Collections.nCopies(Play.TAKE_BACKS_MAX + 5, new Move.TakeBack()));
        assertThat(back.standing()).isEqualTo(sketch.play("MMMMM").standing());
        assertThat(back.past()).isEmpty();
    }

    @Test
    void aStopEndsARunThatHasBegunAndNothingElse() {
        Sketch sketch = Sketch.of(3, 3);
        assertThat(sketch.happenings(".")).isEmpty();
        assertThat(sketch.happenings("MMM.")).hasSize(4);
        assertThat(sketch.run("HM.").endedBy()).contains(EndedBy.STOPPED);
        assertThat(sketch.run("HM.").cleared()).isEqualTo(1);
        assertThat(sketch.happenings("HM.")).last().isEqualTo(new RunEnded("A", 1, sketch.run("HM.")));
    }

    @Test
    void aloneThereIsNobodyToPassTo() {
        assertThat(Sketch.of(3, 3).happenings("M>")).hasSize(1);
        assertThat(Sketch.of(3, 3).play("M>")).isEqualTo(Sketch.of(3, 3).play("M"));
    }

    @Test
    void playersNeedNamesOfTheirOwn() {
        Drill drill = Sketch.of(3, 3).drill();
        assertThatThrownBy(() -> Play.begin(drill, List.of("A", "A"), 500)).hasMessageContaining("of their own");
        assertThatThrownBy(() -> Play.begin(drill, List.of(" "), 500)).hasMessageContaining("of their own");
        assertThatThrownBy(() -> Play.begin(drill, List.of(), 500)).hasMessageContaining("1 to 8");
        List<String> crowd = IntStream.range(0, 9).mapToObj(i -> "P" + i).toList();
        assertThatThrownBy(() -> Play.begin(drill, crowd, 500)).hasMessageContaining("not 9");
    }
}
