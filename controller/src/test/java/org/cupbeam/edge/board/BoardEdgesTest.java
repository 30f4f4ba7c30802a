package org.cupbeam.edge.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The threads of the source, on lines that a test pulls. */
@Timeout(20)
class BoardEdgesTest {
    private static final Rig RIG = new Rig(10, 0, 0, 914.4, List.of(
            new Channel("cup", Channel.Kind.CUP, 17, Channel.Level.HIGH, Channel.Pull.UP),
            new Channel("strike", Channel.Kind.STRIKE, 27, Channel.Level.HIGH, Channel.Pull.UP)), List.of(),
            OptionalInt.empty());

    private static final long HELD_UP_NS = 20_000_000;

    private final Map<String, PulledLine> lines = new ConcurrentHashMap<>();
    private final BoardEdges board = new BoardEdges(RIG,
            channel -> lines.computeIfAbsent(channel.name(), name -> new PulledLine()), System::nanoTime);
    private final List<Long> timesNs = Collections.synchronizedList(new ArrayList<>());

    @AfterEach
    void close() {
        board.close();
    }

    @Test
    void edgesOfAllLinesReachTheSinkInOrderAndOfOneThread() throws InterruptedException {
        int count = 400;
        CountDownLatch all = new CountDownLatch(count);
        List<Thread> threads = Collections.synchronizedList(new ArrayList<>());
        board.start((channel, active, timeNs) -> {
            timesNs.add(timeNs);
            threads.add(Thread.currentThread());
            all.countDown();
        });
        until(() -> lines.size() == 2);
        for (int i = 0; i < count / 2; i++) {
            lines.get("strike").pull();
            lines.get("cup").pull();
        }
        assertThat(all.await(10, TimeUnit.SECONDS)).isTrue();
        assertThat(timesNs).isSorted();
        assertThat(threads.stream().distinct()).hasSize(1);
        assertThat(board.health()).extracting("channel", "edges", "lost", "dropped", "fault").containsExactly(
                org.assertj.core.groups.Tuple.tuple("cup", 200L, 0L, 0L, ""),
                org.assertj.core.groups.Tuple.tuple("strike", 200L, 0L, 0L, ""));
    }

    /** A ball takes 40 ms from beam to beam: an edge with a later time than its own is no ball's any more. */
    @Test
    void edgesKeepTheKernelsTimesHoweverLongTheirReadersAreHeldUp() throws InterruptedException {
        int count = 200;
        CountDownLatch all = new CountDownLatch(count);
        board.start((channel, active, timeNs) -> {
            timesNs.add(timeNs);
            all.countDown();
        });
        until(() -> lines.size() == 2);
        lines.get("cup").heldUpEvery = 8;
        List<Long> stamped = new ArrayList<>();
        for (int i = 0; i < count / 2; i++) {
            stamped.add(lines.get("cup").pull());
            stamped.add(lines.get("strike").pull());
            TimeUnit.MILLISECONDS.sleep(5);
        }
        assertThat(all.await(15, TimeUnit.SECONDS)).isTrue();
        assertThat(timesNs).isEqualTo(stamped.stream().map(EdgeMerger::wholeUnits).toList());
        assertThat(board.health()).extracting("late").containsOnly(0L);
    }

    /** What waits for the absence of an edge must not be settled while that edge is on its way. */
    @Test
    void timeIsNotSettledBeforeAnEdgeWhoseReaderIsHeldUp() {
        board.start((channel, active, timeNs) -> timesNs.add(timeNs));
        until(() -> lines.size() == 2);
        lines.get("cup").heldUpEvery = 1;
        for (int i = 0; i < 50; i++) {
            int before = timesNs.size();
            long pulledNs = lines.get("cup").pull();
            until(() -> board.settledNs(System.nanoTime()) > pulledNs);
            assertThat(timesNs).as("edge %d", i).hasSize(before + 1);
        }
    }

    @Test
    void timeIsSettledSoonAfterItIsAskedFor() {
        board.start((channel, active, timeNs) -> timesNs.add(timeNs));
        until(() -> lines.size() == 2);
        List<Long> tookNs = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            long nowNs = System.nanoTime();
            until(() -> board.settledNs(System.nanoTime()) >= nowNs);
            tookNs.add(System.nanoTime() - nowNs);
        }
        assertThat(tookNs.stream().sorted().toList().get(10)).as("ns, median").isLessThan(EdgeMerger.IDLE_NS / 3);
    }

    @Test
    void timeSettlesWhileNothingHappens() throws InterruptedException {
        CountDownLatch settled = new CountDownLatch(3);
        long startNs = System.nanoTime();
        board.start(new EdgeSink() {
            @Override
            public void edge(int channel, boolean active, long timeNs) {
            }

            @Override
            public void settled(long timeNs) {
                timesNs.add(timeNs);
                settled.countDown();
            }
        });
        assertThat(settled.await(10, TimeUnit.SECONDS)).isTrue();
        assertThat(timesNs).isSorted().last().satisfies(timeNs -> assertThat(timeNs).isGreaterThan(startNs));
    }

    @Test
    void closingIsQuickGivesTheLinesBackAndLetsNoEdgeThroughAfterwards() {
        board.start((channel, active, timeNs) -> timesNs.add(timeNs));
        until(() -> lines.size() == 2);
        lines.get("cup").pull();
        until(() -> !timesNs.isEmpty());

        long startNs = System.nanoTime();
        board.close();
        assertThat(System.nanoTime() - startNs).isLessThan(1_000_000_000L);
        assertThat(lines.values()).allMatch(line -> line.closed);
        int before = timesNs.size();
        lines.get("cup").pull();
        assertThat(timesNs).hasSize(before);
        board.close();
    }

    @Test
    void aLineWhoseDriverHangsDoesNotHoldUpTheClosing() {
        board.start((channel, active, timeNs) -> timesNs.add(timeNs));
        until(() -> lines.size() == 2);
        lines.get("cup").hanging = new CountDownLatch(1);
        until(() -> lines.get("cup").hangs);

        long startNs = System.nanoTime();
        board.close();
        assertThat(System.nanoTime() - startNs).isLessThan(2_000_000_000L);
        assertThat(lines.get("strike").closed).isTrue();
        lines.get("cup").hanging.countDown();
    }

    @Test
    void itMayBeClosedFromTheSinkAndStartsOnlyOnce() {
        board.start((channel, active, timeNs) -> {
            board.close();
            timesNs.add(timeNs);
        });
        until(() -> lines.size() == 2);
        lines.get("cup").pull();
        until(() -> !timesNs.isEmpty());
        assertThatThrownBy(() -> board.start((channel, active, timeNs) -> { })).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void aMachineWithoutPinsSaysSo() {
        assertThatThrownBy(() -> BoardEdges.open(RIG)).isInstanceOf(BoardException.class)
                .hasMessageStartingWith("there are no pins here that can be read")
                .hasMessageEndingWith("a Raspberry Pi with a 64-bit system would do");
    }

    private static void until(BooleanSupplier condition) {
        while (!condition.getAsBoolean()) {
            Thread.yield();
        }
    }

    /** Each pull is an edge, stamped now. */
    private static final class PulledLine implements LinePort {
        private final Queue<Long> edges = new ConcurrentLinkedQueue<>();
        private volatile int heldUpEvery;
        private int reads;
        private volatile CountDownLatch hanging;
        private volatile boolean hangs;
        private volatile boolean closed;
        private boolean high;
        private long stampNs;

        /** However long this thread is held up between stamp and queue, nobody finds the line quiet meanwhile: it is not what is tried here. */
        synchronized long pull() {
            long timeNs = System.nanoTime();
            edges.add(timeNs);
            return timeNs;
        }

        @Override
        public boolean isHigh() {
            return high;
        }

        @Override
        public boolean await(long timeoutNs) {
            try {
                if (hanging != null) {
                    hangs = true;
                    hanging.await();
                }
                for (long untilNs = System.nanoTime() + timeoutNs; !hasEdge() && System.nanoTime() < untilNs;) {
                    Thread.sleep(0, 100_000);
                }
                return hasEdge();
            } catch (InterruptedException interrupted) {
                throw new IllegalStateException(interrupted);
            }
        }

        @Override
        public synchronized boolean hasEdge() {
            return !edges.isEmpty();
        }

        @Override
        public void read() {
            if (heldUpEvery > 0 && ++reads % heldUpEvery == 0) {
                LockSupport.parkNanos(HELD_UP_NS);
            }
            stampNs = edges.remove();
            high = !high;
        }

        @Override
        public boolean rising() {
            return high;
        }

        @Override
        public long timeNs() {
            return stampNs;
        }

        @Override
        public void close() {
            closed = true;
        }
    }
}
