package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import org.cupbeam.event.Command;
import org.cupbeam.event.Event;
import org.cupbeam.event.Score;
import org.cupbeam.journal.FailingDisk;
import org.cupbeam.journal.JournalWriter;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FailingJournalTest {
    private static final Command.Start START =
            new Command.Start(SteppedLane.ladder(9, 5), List.of("Ana"), SteppedLane.TAGS);
    @TempDir
    Path folder;
    private SteppedLane lane;

    @BeforeEach
    void open() {
        lane = new SteppedLane(folder.resolve("lane.db")).open();
        lane.ask(START).sync();
        FailingDisk.fails(lane.journal, true);
    }

    @AfterEach
    void close() {
        lane.close();
    }

    private void heal() {
        FailingDisk.fails(lane.journal, false);
        lane.pass(1_000);
    }

    @Test
    void nothingIsToldThatIsNotOnTheDiskAndAllOfItInOrderOnceItIs() {
        int told = lane.outlet.order.size();
        lane.hole().sync().miss().sync().hole().sync();
        assertThat(lane.outlet.order).hasSize(told);
        assertThat(lane.events()).hasSize(1);

        heal();
        assertThat(lane.events()).extracting(Event::sequence).containsExactly(1L, 2L, 3L, 4L);
        assertThat(lane.outlet.score().players().get(0).station()).isEqualTo(3);
        assertThat(lane.outlet.scores).extracting(Score::sequence).isSorted();
    }

    @Test
    void healthAndTheLampSaySoAndThatItIsWellAgain() {
        lane.hole().sync().pass(3000);
        assertThat(lane.outlet.health().faults()).hasSize(1);
        assertThat(lane.outlet.health().faults().get(0)).startsWith("nothing can be written down, and what happens waits");
        assertThat(lane.lamp).endsWith(Lamp.State.FAULT);

        heal();
        lane.pass(500);
        assertThat(lane.outlet.health().faults()).isEmpty();
        assertThat(lane.lamp).endsWith(Lamp.State.READY);
    }

    @Test
    void commandsAreRefusedAtOnceAndStayRefused() {
        lane.hole().sync();
        lane.ask("c", OptionalLong.empty(), new Command.Miss(100));
        assertThat(lane.outlet.answer().accepted()).isFalse();
        assertThat(lane.outlet.answer().reason()).startsWith("the lane cannot write to its disk now");

        heal();
        lane.crash().ask("c", OptionalLong.empty(), new Command.Miss(100)).sync();
        assertThat(lane.outlet.answer().accepted()).isFalse();
        assertThat(lane.events()).hasSize(2);
    }

    @Test
    void whatNoLongerFitsInMemoryHasNotHappenedAndIsCounted() {
        for (int i = 0; i < JournalWriter.QUEUE + 100; i++) {
            lane.pulse(SteppedLane.PEDAL, 100).passWithoutDisk(500);
        }
        lane.sync();
        for (int i = 0; i < 10; i++) {
            lane.pulse(SteppedLane.PEDAL, 100).passWithoutDisk(500);
        }
        lane.pass(500);
        assertThat(lane.outlet.health().faults()).anyMatch(fault -> fault.startsWith("attempts were lost"));

        heal();
        List<Event> events = lane.events();
        assertThat(events).extracting(Event::sequence)
                .containsExactlyElementsOf(LongStream.rangeClosed(1, events.size()).boxed().toList());
        Score healed = ComingBackTest.timeless(lane.outlet.score());
        assertThat(healed.sequence()).isEqualTo(events.size());
        assertThat(ComingBackTest.timeless(lane.crash().outlet.score())).isEqualTo(healed);
    }
}
