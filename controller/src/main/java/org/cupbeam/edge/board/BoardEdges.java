package org.cupbeam.edge.board;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import org.cupbeam.edge.ChannelHealth;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Edges from a board's pins, each with the kernel's own time stamp (CLOCK_MONOTONIC, the clock of
 * {@link System#nanoTime}), cut to microseconds. A thread per line reads, one more puts the edges in order and hands them
 * on. A channel that is active when its line is opened is an edge then.
 */
public final class BoardEdges implements EdgeSource {
    private static final long READ_WITHIN_NS = 1_000_000;
    private static final int RING_CAPACITY = 1024;
    private static final long READERS_END_NS = 1_000_000_000;
    private static final long MERGER_END_NS = 500_000_000;
    private static final Logger LOG = LoggerFactory.getLogger(BoardEdges.class);

    private final LongSupplier clock;
    private final List<LineReader> lines;
    private final List<Thread> readers = new ArrayList<>();
    private volatile EdgeMerger order;
    private Thread merger;
    private volatile boolean reading;
    private volatile boolean merging;

    BoardEdges(Rig rig, LineOpener opener, LongSupplier clock) {
        this.clock = clock;
        lines = rig.channels().stream().map(channel -> new LineReader(channel, opener, new EdgeRing(RING_CAPACITY), clock,
                waitNs -> LockSupport.parkNanos(this, waitNs))).toList();
    }

    /**
     * Takes hold of the board; its lines are asked for on {@link #start}, and one that cannot be had is asked for again
     * and again, and shows in {@link #health}.
     *
     * @throws BoardException where there is no board whose pins can be read
     */
    public static BoardEdges open(Rig rig) throws BoardException {
        return new BoardEdges(rig, GpiodLines.open(), System::nanoTime);
    }

    @Override
    public void start(EdgeSink sink) {
        if (merger != null) {
            throw new IllegalStateException("started before");
        }
        reading = true;
        merging = true;
        EdgeMerger ordering = new EdgeMerger(lines, sink);
        merger = daemon("edges", () -> merge(ordering));
        order = ordering;
        for (LineReader line : lines) {
            readers.add(daemon("edges-" + line.channel().name(), () -> read(line)));
        }
        merger.start();
        readers.forEach(Thread::start);
    }

    /** {@inheritDoc} Where readers are not held up. */
    @Override
    public long latenessNs() {
        return EdgeMerger.QUEUED_WITHIN_NS + READ_WITHIN_NS;
    }

    /** {@inheritDoc} It may take a millisecond to be told. */
    @Override
    public long settledNs(long nowNs) {
        EdgeMerger ordering = order;
        if (ordering == null) {
            return nowNs - latenessNs();
        }
        long settledNs = ordering.settledNs();
        if (settledNs < nowNs - latenessNs()) {
            LockSupport.unpark(merger);
        }
        return settledNs;
    }

    @Override
    public List<ChannelHealth> health() {
        return lines.stream().map(line -> line.counters().health(line.channel().name())).toList();
    }

    /** {@inheritDoc} Takes a tenth of a second; where a line's driver hangs, a second, and its thread is left behind. */
    @Override
    public void close() {
        reading = false;
        readers.forEach(LockSupport::unpark);
        boolean ended = await(readers, READERS_END_NS);
        merging = false;
        if (merger != null) {
            LockSupport.unpark(merger);
            ended &= await(List.of(merger), MERGER_END_NS);
        }
        if (!ended) {
            LOG.warn("A thread that reads the board's lines does not end; it is left behind");
        }
    }

    private void read(LineReader line) {
        EdgeRing ring = line.ring();
        while (reading) {
            line.turn();
            if (!ring.isEmpty()) {
                LockSupport.unpark(merger);
            }
        }
        line.close();
    }

    private void merge(EdgeMerger ordering) {
        while (merging) {
            long waitNs = ordering.turn(clock.getAsLong());
            if (waitNs > 0) {
                LockSupport.parkNanos(this, waitNs);
            }
        }
        ordering.drain();
    }

    private static Thread daemon(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.setPriority(Thread.MAX_PRIORITY);
        return thread;
    }

    /** Waits for threads to end, whatever interrupts; the caller's own is not waited for. */
    private static boolean await(List<Thread> threads, long timeoutNs) {
        long untilNs = System.nanoTime() + timeoutNs;
        boolean interrupted = false;
        for (Thread thread : threads) {
            while (thread.isAlive() && thread != Thread.currentThread() && System.nanoTime() < untilNs) {
                try {
                    TimeUnit.NANOSECONDS.timedJoin(thread, Math.max(1, untilNs - System.nanoTime()));
                } catch (InterruptedException wait) {
                    interrupted = true;
                }
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        return threads.stream().noneMatch(thread -> thread.isAlive() && thread != Thread.currentThread());
    }
}
