package org.cupbeam.edge.board;

import java.util.ArrayDeque;
import java.util.Deque;
import org.cupbeam.rig.Channel;

/** A line as the kernel has it: a level, and room for sixteen edges, of which the newest is dropped when it is full. */
final class FakeLine implements LineOpener, LinePort {
    private static final int KERNEL_EDGES_MAX = 16;

    private record Edge(boolean rising, long timeNs) {
    }

    final FakeClock clock;
    private final Deque<Edge> waiting = new ArrayDeque<>();
    private boolean high;
    private Edge taken;
    private Throwable failure;
    Channel channel;
    boolean isOpen;
    int openings;
    /** Runs while the level is being read. */
    Runnable whileLevelIsRead = () -> { };
    /** Runs once an edge has been taken off the kernel. */
    Runnable whileEdgeIsRead = () -> { };

    FakeLine(FakeClock clock) {
        this.clock = clock;
    }

    /** The level changes now, and the kernel notes it. */
    void set(boolean level) {
        set(level, clock.nowNs);
    }

    void set(boolean level, long timeNs) {
        if (level != high) {
            high = level;
            if (isOpen && waiting.size() < KERNEL_EDGES_MAX) {
                waiting.add(new Edge(level, timeNs));
            }
        }
    }

    /** Everything throws this from now on; null makes all well. */
    void fail(Throwable with) {
        failure = with;
    }

    @Override
    public LinePort open(Channel asked) {
        openings++;
        failIfDue();
        channel = asked;
        isOpen = true;
        return this;
    }

    @Override
    public boolean isHigh() {
        failIfDue();
        boolean level = high;
        whileLevelIsRead.run();
        return level;
    }

    @Override
    public boolean await(long timeoutNs) {
        failIfDue();
        if (waiting.isEmpty()) {
            clock.nowNs += timeoutNs;
        }
        return !waiting.isEmpty();
    }

    @Override
    public boolean hasEdge() {
        failIfDue();
        return !waiting.isEmpty();
    }

    @Override
    public void read() {
        failIfDue();
        taken = waiting.remove();
        whileEdgeIsRead.run();
    }

    @Override
    public boolean rising() {
        return taken.rising;
    }

    @Override
    public long timeNs() {
        return taken.timeNs;
    }

    @Override
    public void close() {
        isOpen = false;
        waiting.clear();
    }

    private void failIfDue() {
        if (failure != null) {
            FakeLine.<RuntimeException>sneak(failure);
        }
    }

    @SuppressWarnings("unchecked")
    private static <T extends Throwable> void sneak(Throwable thrown) throws T {
        throw (T) thrown;
    }
}
