package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.Size;
import org.cupbeam.event.Command;
import org.cupbeam.event.Event;
import org.cupbeam.event.Score;
import org.cupbeam.journal.FailingDisk;

/** Whatever happens, in whatever order, and whenever the power goes: what was told holds, and nothing else does. */
class CrashPropertyTest {
    enum Deed {
        HOLE, HOLE_AGAIN, MISS, TAKE_BACK, LONG_PRESS, START_ALONE, START_DUEL, ENTER, VOID, PASS, END, HALF_A_DROP,
        SYNC, SYNC_AGAIN, DISK_FAILS, DISK_WORKS, CRASH
    }

    @Property(tries = 60, shrinking = ShrinkingMode.BOUNDED)
    void aRestartGivesBackWhatWasTold(@ForAll @Size(max = 40) List<Deed> deeds) throws IOException {
        Path folder = Files.createTempDirectory("crash");
        try (SteppedLane lane = new SteppedLane(folder.resolve("lane.db")).open()) {
            for (Deed deed : deeds) {
                if (deed == Deed.CRASH) {
                    crash(lane);
                } else {
                    act(deed, lane);
                }
            }
            crash(lane);
            List<Event> events = lane.events();
            assertThat(events).extracting(Event::sequence)
                    .containsExactlyElementsOf(LongStream.rangeClosed(1, events.size()).boxed().toList());
        } finally {
            try (Stream<Path> left = Files.walk(folder)) {
                left.sorted(Comparator.reverseOrder()).forEach(each -> assertThat(each.toFile().delete()).isTrue());
            }
        }
    }

    /** What the lane told last is what it is in when it comes back, and all it told of is in the journal. */
    private static void crash(SteppedLane lane) {
        Score told = ComingBackTest.timeless(lane.outlet.score());
        lane.crash();
        assertThat(ComingBackTest.timeless(lane.outlet.score())).isEqualTo(told);
        assertThat(told.sequence()).isLessThanOrEqualTo(lane.journal.last());
    }

    private static void act(Deed deed, SteppedLane lane) {
        switch (deed) {
            case HOLE, HOLE_AGAIN -> lane.hole();
            case MISS -> lane.miss();
            case TAKE_BACK -> lane.takeBack();
            case LONG_PRESS -> lane.pressLong();
            case START_ALONE -> lane.start(SteppedLane.ladder(2, 2), "Ana");
            case START_DUEL -> lane.start(SteppedLane.ladder(2, 1), "Ana", "Bo", "Cy");
            case ENTER -> lane.ask(new Command.Miss(1234.56));
            case VOID -> lane.ask(new Command.Void(lane.journal.last()));
            case PASS -> lane.ask(new Command.Pass());
            case END -> lane.ask(new Command.End());
            case HALF_A_DROP -> lane.edge(SteppedLane.CUP, true);
            case SYNC, SYNC_AGAIN -> lane.sync();
            case DISK_FAILS -> FailingDisk.fails(lane.journal, true);
            case DISK_WORKS -> {
                FailingDisk.fails(lane.journal, false);
                lane.pass(1_000);
            }
            case CRASH -> throw new IllegalArgumentException();
        }
    }
}
