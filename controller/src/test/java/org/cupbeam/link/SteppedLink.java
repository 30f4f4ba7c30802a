package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.cupbeam.event.Command;

/** A link stepped by hand, with the broker, the journal and the clock in the test's hand. */
abstract class SteppedLink {
    final FakeWire wire = new FakeWire();
    final FakeOutbox outbox = new FakeOutbox();
    final List<Command> commands = new ArrayList<>();
    boolean laneIsBusy;
    long nowMs;
    final Link link = new Link(wake -> wire, Lane.TOPICS, "boot", outbox,
            () -> TimeUnit.MILLISECONDS.toNanos(nowMs), new Random(7),
            command -> !laneIsBusy && commands.add(command));

    void step() {
        for (int i = 0; i < 1000 && link.doWork() > 0; i++) {
            assertThat(i).as("there is an end to what there is to do").isLessThan(999);
        }
    }

    void online() {
        link.health(Lane.report());
        step();
        wire.accept();
        step();
        assertThat(link.online()).isTrue();
    }

    static List<String> texts(long from, long to) {
        return LongStream.rangeClosed(from, to).mapToObj(Long::toString).toList();
    }
}
