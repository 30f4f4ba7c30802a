package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.Score;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommandsTest {
    private static final OptionalLong ANYTHING = OptionalLong.empty();
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

    private String refused(Command.Ask ask) {
        int before = lane.events().size();
        lane.ask(ask).sync();
        assertThat(lane.outlet.answer().accepted()).isFalse();
        assertThat(lane.events()).hasSize(before);
        return lane.outlet.answer().reason();
    }

    @Test
    void anAnswerComesAfterWhatItSpeaksOfIsOnTheDiskAndAfterTheScore() {
        lane.ask("c", ANYTHING, new Command.Start(SteppedLane.ladder(2, 2), List.of("Ana"), SteppedLane.TAGS));
        assertThat(lane.outlet.answers).isEmpty();
        lane.outlet.order.clear();
        lane.sync();

        assertThat(lane.outlet.answers).containsExactly(new Answer("c", true, null, 1));
        assertThat(lane.outlet.order).containsExactly("written", "score", "answer");
    }

    @Test
    void aCommandThatComesAgainActsOnceAndGetsTheSameAnswer() {
        lane.start(SteppedLane.ladder(2, 2), "Ana").sync();
        lane.ask("twice", ANYTHING, new Command.Miss(-200)).ask("twice", ANYTHING, new Command.Miss(-200)).sync();
        lane.ask("twice", ANYTHING, new Command.Miss(-200)).sync();
        lane.crash().ask("twice", ANYTHING, new Command.Miss(-200)).sync();

        assertThat(lane.events()).hasSize(2);
        assertThat(lane.outlet.answers).containsExactly(new Answer("twice", true, null, 2));
    }

    @Test
    void aRefusalThatComesAgainIsTheSameEvenIfItWouldBeAcceptedNow() {
        lane.ask("early", ANYTHING, new Command.TakeBack()).sync();
        Answer no = lane.outlet.answer();
        lane.hole().sync();
        lane.ask("early", ANYTHING, new Command.TakeBack()).sync();
        assertThat(lane.outlet.answer()).isEqualTo(no);
        lane.crash().ask("early", ANYTHING, new Command.TakeBack()).sync();
        assertThat(lane.outlet.answer()).isEqualTo(no);
        assertThat(no.reason()).isEqualTo("there is no attempt to take back");
    }

    @Test
    void whoLooksAtAnOldScoreIsRefused() {
        lane.start(SteppedLane.ladder(2, 2), "Ana").hole().sync();
        long seen = lane.outlet.score().sequence();
        lane.miss().ask("late", OptionalLong.of(seen), new Command.TakeBack()).sync();
        assertThat(lane.outlet.answer().accepted()).isFalse();
        assertThat(lane.outlet.answer().reason()).startsWith("the lane has moved on");

        lane.ask("now", OptionalLong.of(lane.outlet.answer().sequence()), new Command.TakeBack()).sync();
        assertThat(lane.outlet.answer().accepted()).isTrue();
        assertThat(((Data.Correction) lane.events().get(3).data()).by()).isEqualTo("Jo");
    }

    @Test
    void whatMakesNoSenseIsRefusedWithWhatWould() {
        assertThat(refused(new Command.Pass())).isEqualTo("no drill is on: start one");
        assertThat(refused(new Command.End())).isEqualTo("no drill is on: start one");
        assertThat(refused(new Command.Miss(60_000))).startsWith("no ball finishes 50 m from a hole");
        assertThat(refused(new Command.Void(1))).startsWith("nothing was putted under the number 1");

        lane.start(SteppedLane.ladder(1, 1), "Ana").sync();
        assertThat(refused(new Command.Void(1))).startsWith("nothing was putted under the number 1");
        assertThat(refused(new Command.Pass())).isEqualTo("nobody else is left in play: end the run instead");
        assertThat(refused(new Command.End())).isEqualTo("nobody has putted yet: start another drill instead");
        lane.hole().sync();
        assertThat(refused(new Command.End())).startsWith("that is over");
    }

    @Test
    void anAttemptCanBeVoidedInTheRecordWhileThePlayStaysAsItIs() {
        lane.start(SteppedLane.ladder(2, 2), "Ana").hole().sync();
        Score before = lane.outlet.score();
        lane.ask("v", ANYTHING, new Command.Void(2)).sync();

        assertThat(lane.outlet.answer()).isEqualTo(new Answer("v", true, null, 2));
        assertThat(lane.events().get(2).data()).isInstanceOfSatisfying(Data.Correction.class, correction -> {
            assertThat(correction.what()).isEqualTo(Data.Correction.What.VOIDED);
            assertThat(correction.of()).isEqualTo(2);
        });
        assertThat(lane.outlet.score()).isEqualTo(before);
    }

    @Test
    void aMissIsEnteredWithItsFinishOrShortOfWhereASensorSees() {
        lane.ask(new Command.Miss(250)).ask(new Command.Miss(Double.NaN)).sync();

        Data.Attempt known = (Data.Attempt) lane.events().get(0).data();
        assertThat(known.putt().finishMm()).isEqualTo(250);
        Data.Attempt unknown = (Data.Attempt) lane.events().get(1).data();
        assertThat(unknown.putt().finishMm()).isNaN();
        assertThat(unknown.putt().highMm()).isBetween(880.0, 914.4);
    }

    @Test
    void tooManyCommandsAtOnceAreNotTaken() {
        int taken = 0;
        while (lane.agent.hear(new Command("n" + taken, "Jo", ANYTHING, new Command.Miss(0))) && taken < 1000) {
            taken++;
        }
        assertThat(taken).isEqualTo(64);
        lane.pass(200);
        assertThat(lane.outlet.answers).hasSize(64);
    }
}
