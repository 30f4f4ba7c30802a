package org.cupbeam.lane;

import java.util.concurrent.atomic.AtomicLong;
import org.cupbeam.edge.EdgeSink;

/**
 * The way of edges from their source's thread to the lane's: bounded, in order, without waiting and without allocating.
 * An edge that finds no room is dropped, and counted.
 */
final class EdgeQueue implements EdgeSink {
    private final long[] timesNs;
    private final int[] words;
    private final int mask;
    private final Runnable wake;
    private final AtomicLong head = new AtomicLong();
    private final AtomicLong tail = new AtomicLong();
    private volatile long dropped;

    /**
     * @param capacity in edges, a power of two
     * @param wake     tells whoever drains that there is something
     */
    EdgeQueue(int capacity, Runnable wake) {
        if (Integer.bitCount(capacity) != 1) {
            throw new IllegalArgumentException("the capacity is a power of two, not " + capacity);
        }
        timesNs = new long[capacity];
        words = new int[capacity];
        mask = capacity - 1;
        this.wake = wake;
    }

    @Override
    public void edge(int channel, boolean active, long timeNs) {
        long at = tail.get();
        if (at - head.get() > mask) {
            dropped = dropped + 1;
        } else {
            timesNs[(int) at & mask] = timeNs;
            words[(int) at & mask] = channel << 1 | (active ? 1 : 0);
            tail.set(at + 1);
        }
        wake.run();
    }

    /** How many edges found no room. Any thread. */
    long dropped() {
        return dropped;
    }

    /** Hands on what is there, and no more than that; the draining thread. Returns how many edges that was. */
    int drainTo(EdgeSink sink) {
        long from = head.get();
        long to = tail.get();
        for (long at = from; at < to; at++) {
            int word = words[(int) at & mask];
            long timeNs = timesNs[(int) at & mask];
            head.set(at + 1);
            sink.edge(word >> 1, (word & 1) != 0, timeNs);
        }
        return (int) (to - from);
    }
}
