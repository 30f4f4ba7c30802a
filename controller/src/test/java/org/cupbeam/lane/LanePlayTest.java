package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Score;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LanePlayTest {
    @TempDir
    Path folder;
    private SteppedLane lane;

    @BeforeEach
    void open() {
        lane = new SteppedLane(folder.resolve("lane.db")).open();
    }

    @AfterEach
    void close() {
        lane.close();
    }

    private List<String> told() {
        return lane.events().stream().map(LanePlayTest::inShort).toList();
    }

    private static String inShort(Event event) {
        String number = event.sequence() + " ";
        if (event.data() instanceof Data.Attempt attempt) {
            return number + attempt.putt().outcome().word() + (attempt.play() == null ? "" : " by "
                    + attempt.play().player() + " from " + attempt.play().station() + ", left "
                    + attempt.play().ballsLeft());
        }
        if (event.data() instanceof Data.RunStarted run) {
            return number + run.of().player() + " starts " + run.of().run().substring(9);
        }
        if (event.data() instanceof Data.RunEnded run) {
            return number + run.of().player() + " ends " + run.of().run().substring(9) + " " + run.endedBy().word();
        }
        if (event.data() instanceof Data.RunPassed run) {
            return number + run.of().player() + " passes";
        }
        if (event.data() instanceof Data.DuelEnded duel) {
            return number + "duel to " + duel.winner();
        }
        if (event.data() instanceof Data.Correction correction) {
            return number + correction.what().word() + " " + correction.of() + " by " + correction.by();
        }
        return number + event.data().type();
    }

    @Test
    void withoutADrillAnAttemptIsLoggedOutsideAnyPlay() {
        lane.hole().miss().sync();

        assertThat(told()).containsExactly("1 holed", "2 missed");
        assertThat(lane.outlet.score().state()).isEqualTo(Score.State.IDLE);
        assertThat(lane.outlet.score().sequence()).isEqualTo(2);
        assertThat(lane.outlet.score().last().putt().how()).isEqualTo(Putt.How.ENTERED);
    }

    @Test
    void aRunStartsWithItsDrillAndEndsWithItsLastBallAndTheNextStartsWithTheNextAttempt() {
        lane.start(SteppedLane.ladder(2, 2), "Ana").hole().miss().miss().hole().sync();

        assertThat(told()).containsExactly("1 Ana starts 1", "2 holed by Ana from 1, left 1",
                "3 missed by Ana from 2, left 1", "4 missed by Ana from 2, left 0", "5 Ana ends 1 out-of-balls",
                "6 Ana starts 6", "7 holed by Ana from 1, left 1");
        Score.Player ana = lane.outlet.score().players().get(0);
        assertThat(ana.station()).isEqualTo(2);
        assertThat(ana.stationMm()).isEqualTo(1500);
        assertThat(ana.putts()).hasSize(1);
        assertThat(ana.run()).endsWith("-6");
        assertThat(lane.outlet.score().tags()).isEqualTo(SteppedLane.TAGS);
    }

    @Test
    void aDuelNamesItsRunsAndItsWinner() {
        lane.start(SteppedLane.ladder(2, 1), "Ana", "Bo").hole().miss().sync();

        assertThat(told()).containsExactly("1 Ana starts 1", "2 Bo starts 2", "3 holed by Ana from 1, left 0",
                "4 missed by Bo from 1, left 0", "5 Bo ends 2 out-of-balls", "6 Ana ends 1 duel", "7 duel to Ana");
        assertThat(lane.outlet.score().state()).isEqualTo(Score.State.OVER);
        assertThat(lane.outlet.score().winner()).isEqualTo("Ana");
        assertThat(lane.outlet.score().duel()).endsWith("-duel-1");
        assertThat(lane.outlet.score().turn()).isEmpty();
        Data.RunEnded bo = (Data.RunEnded) lane.events().get(4).data();
        assertThat(bo.meanMissMm()).isNaN();
        assertThat(bo.endedBy()).isEqualTo(EndedBy.OUT_OF_BALLS);
    }

    @Test
    void takingBackWithTheFootUndoesTheLastAttemptAndWhatCameOfIt() {
        lane.start(SteppedLane.ladder(1, 2), "Ana").miss().hole().takeBack().hole().sync();

        assertThat(told()).containsExactly("1 Ana starts 1", "2 missed by Ana from 1, left 1",
                "3 holed by Ana from 1, left 0", "4 Ana ends 1 cleared-all", "5 taken-back 3 by pedal",
                "6 holed by Ana from 1, left 0", "7 Ana ends 1 cleared-all");
        assertThat(lane.outlet.scores).extracting(Score::sequence).containsExactly(0L, 1L, 2L, 4L, 5L, 7L);
        assertThat(lane.outlet.scores.get(4).players().get(0).putts()).hasSize(1);
        assertThat(lane.outlet.scores.get(4).last().sequence()).isEqualTo(2);
    }

    @Test
    void aRoundThatIsTakenBackToBeforeItsBeginningKeepsItsNameForWhenItBeginsAgain() {
        lane.start(SteppedLane.ladder(1, 1), "Ana").hole().hole().takeBack().hole().sync();

        assertThat(told()).containsExactly("1 Ana starts 1", "2 holed by Ana from 1, left 0", "3 Ana ends 1 cleared-all",
                "4 Ana starts 4", "5 holed by Ana from 1, left 0", "6 Ana ends 4 cleared-all",
                "7 taken-back 5 by pedal", "8 holed by Ana from 1, left 0", "9 Ana ends 4 cleared-all");
    }

    @Test
    void theFootTakesBackTheLastAttemptOutsideAnyPlayButNoOther() {
        lane.hole().miss().takeBack().takeBack().sync();

        assertThat(told()).containsExactly("1 holed", "2 missed", "3 taken-back 2 by pedal");
        assertThat(lane.outlet.score().last()).isNull();
        assertThat(lane.outlet.score().sequence()).isEqualTo(3);
    }

    @Test
    void aLongPressPassesTheTurnOrEndsTheRunOfWhoeverIsAlone() {
        lane.start(SteppedLane.ladder(2, 2), "Ana", "Bo").pressLong().miss().sync();
        assertThat(told()).endsWith("3 Ana passes", "4 missed by Bo from 1, left 1");

        lane.start(SteppedLane.ladder(2, 2), "Cy").pressLong().miss().pressLong().sync();
        assertThat(told()).endsWith("5 Bo ends 2 stopped", "6 Ana ends 1 stopped", "7 duel to Ana",
                "8 Cy starts 8", "9 missed by Cy from 1, left 1", "10 Cy ends 8 stopped");
    }

    @Test
    void aPlayThatNobodyPuttedInEndsWhenAnotherBegins() {
        lane.start(SteppedLane.ladder(2, 2), "Ana").start(SteppedLane.ladder(1, 1), "Bo").sync();

        assertThat(told()).containsExactly("1 Ana starts 1", "2 Ana ends 1 stopped", "3 Bo starts 3");
    }

    @Test
    void anOvershootIsTheDrillsToSayAndTheRigsWithoutOne() {
        lane.ask(new Command.Miss(700)).sync();
        assertThat(lane.outlet.score().last().putt().overshoot()).isFalse();

        lane.start(new Drill("Lag", new Stations.Marked(List.of(1200.0)), 3,
                Supply.EVERY_STATION, 1, OptionalDouble.of(300),
                Penalty.LOSE_BALL, Turns.BALL), "Ana")
                .ask(new Command.Miss(700)).sync();
        assertThat(lane.outlet.score().last().putt().overshoot()).isTrue();
        assertThat(lane.outlet.score().players().get(0).ballsLeft()).isEqualTo(1);
        assertThat(lane.outlet.score().limitMm()).isEqualTo(300);
    }

    @Test
    void eventsCarryTheMonotonicTimeOfThePuttAndItsTimeOfDay() {
        long dropNs = lane.nowNs;
        lane.hole().sync();

        Event event = lane.events().get(0);
        assertThat(event.data().stamp().monotonicNs()).isEqualTo(dropNs);
        assertThat(event.data().stamp().boot()).isEqualTo("boot-1");
        assertThat(event.time()).isBefore(lane.wall).isAfter(lane.wall.minusMillis(1500));
    }

    @Test
    void whoIsNextAndFromWhereCanBeReadAtAnyTime() {
        assertThat(lane.agent.upNext()).isEqualTo(UpNext.NOBODY);
        lane.start(SteppedLane.ladder(2, 1), "Ana", "Bo").hole();
        assertThat(lane.agent.upNext()).isEqualTo(new UpNext("Bo", 1000));
        lane.hole();
        assertThat(lane.agent.upNext()).isEqualTo(new UpNext("Ana", 1500));
    }
}
