package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.practice.Evening;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class TraceSourceTest {
    private record Edge(int channel, boolean active, long timeNs) {
    }

    private static final Rig RIG = PracticeRigs.FULL.level();
    @TempDir
    private Path folder;
    private Path trace;
    private final List<Edge> recorded = new ArrayList<>();
    private final BlockingQueue<Edge> heard = new LinkedBlockingQueue<>();

    @BeforeEach
    void record() throws Exception {
        trace = folder.resolve("evening.vcd");
        try (VcdWriter writer = VcdWriter.create(trace, RIG, 0, Instant.EPOCH)) {
            Evening.simulate(5, PracticeLane.busy(RIG), 30).play(writer);
        }
        try (VcdReader reader = VcdReader.open(trace, RIG)) {
            reader.drainTo((channel, active, timeNs) -> recorded.add(new Edge(channel, active, timeNs)));
        }
    }

    private List<Edge> heard(int count) throws InterruptedException {
        List<Edge> all = new ArrayList<>();
        while (all.size() < count) {
            Edge next = heard.poll(20, TimeUnit.SECONDS);
            assertThat(next).as("edge %d of %d", all.size(), count).isNotNull();
            all.add(next);
        }
        return all;
    }

    @Test
    void everyEdgeComesInOrderAndTheClockNeverPassesOneThatHasNotCome() throws Exception {
        AtomicLong late = new AtomicLong(Long.MIN_VALUE);
        try (TraceSource source = TraceSource.open(trace, RIG, 0, 1000, System::nanoTime)) {
            source.start((channel, active, timeNs) -> {
                late.accumulateAndGet(source.nowNs() - timeNs, Math::max);
                heard.add(new Edge(channel, active, timeNs));
            });
            assertThat(heard(recorded.size())).isEqualTo(recorded);
        }
        assertThat(late.get()).as("ns that the clock was past an edge as it came").isLessThanOrEqualTo(0);
    }

    @Test
    void aMachineThatIsSlowToTakeAnEdgeMakesTheTimeWait() throws Exception {
        try (TraceSource source = TraceSource.open(trace, RIG, 0, 1000, System::nanoTime)) {
            EdgeSink slow = (channel, active, timeNs) -> {
                sleep(20);
                if (source.nowNs() > timeNs) {
                    throw new AssertionError("the clock went on");
                }
                heard.add(new Edge(channel, active, timeNs));
            };
            source.start(slow);
            assertThat(heard(20)).isEqualTo(recorded.subList(0, 20));
        }
    }

    private static void sleep(long ms) {
        try {
            TimeUnit.MILLISECONDS.sleep(ms);
        } catch (InterruptedException closed) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void begunInItsMiddleItSaysFirstWhatIsBlockedThere() throws Exception {
        int at = 0;
        while (!recorded.get(at).active() || recorded.get(at).timeNs() < 20_000_000_000L
                || recorded.get(at + 1).channel() != recorded.get(at).channel()) {
            at++;
        }
        long fromNs = (recorded.get(at).timeNs() + recorded.get(at + 1).timeNs()) / 2;
        try (TraceSource source = TraceSource.open(trace, RIG, fromNs, 1000, System::nanoTime)) {
            assertThat(source.nowNs()).isEqualTo(fromNs);
            source.start((channel, active, timeNs) -> heard.add(new Edge(channel, active, timeNs)));
            List<Edge> rest = heard(recorded.size() - at);
            assertThat(rest.get(0)).isEqualTo(new Edge(recorded.get(at).channel(), true, fromNs));
            assertThat(rest.subList(1, rest.size())).isEqualTo(recorded.subList(at + 1, recorded.size()));
        }
    }

    @Test
    void atItsEndTheClockRunsOn() throws Exception {
        AtomicLong machineNs = new AtomicLong();
        long lastNs = recorded.get(recorded.size() - 1).timeNs();
        try (TraceSource source = TraceSource.open(trace, RIG, lastNs + 1, 10, machineNs::get)) {
            source.start((channel, active, timeNs) -> heard.add(new Edge(channel, active, timeNs)));
            machineNs.set(3_000_000_000L);
            assertThat(source.nowNs()).isEqualTo(lastNs + 1 + 30_000_000_000L);
        }
    }

    @Test
    void aTraceThatMakesNoSenseIsRefused() throws Exception {
        Files.writeString(trace, "no trace");
        assertThatThrownBy(() -> TraceSource.open(trace, RIG, 0, 1, System::nanoTime))
                .isInstanceOf(TraceException.class).hasMessageContaining("evening.vcd");
    }
}
