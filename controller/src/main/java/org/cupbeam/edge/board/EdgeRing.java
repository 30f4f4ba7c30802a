package org.cupbeam.edge.board;

import java.util.concurrent.atomic.AtomicLong;

/** A bounded way from one thread to another for one line's edges. Allocates nothing on the way. */
final class EdgeRing {
    private final long[] timesNs;
    private final long[] arrivalsNs;
    private final boolean[] actives;
    private final int mask;
    private final AtomicLong head = new AtomicLong();
    private final AtomicLong tail = new AtomicLong();

    /** Takes {@code capacity} edges, a power of two. */
    EdgeRing(int capacity) {
        if (Integer.bitCount(capacity) != 1) {
            throw new IllegalArgumentException("capacity must be a power of two, not " + capacity);
        }
        timesNs = new long[capacity];
        arrivalsNs = new long[capacity];
        actives = new boolean[capacity];
        mask = capacity - 1;
    }

    /** The writing thread's: adds an edge, or says that there is no room. */
    boolean offer(boolean active, long timeNs, long arrivalNs) {
        long at = tail.get();
        if (at - head.get() > mask) {
            return false;
        }
        int slot = (int) at & mask;
        actives[slot] = active;
        timesNs[slot] = timeNs;
        arrivalsNs[slot] = arrivalNs;
        tail.set(at + 1);
        return true;
    }

    /** The reading thread's, like all below: whether there is no edge. */
    boolean isEmpty() {
        return head.get() == tail.get();
    }

    boolean headActive() {
        return actives[(int) head.get() & mask];
    }

    long headTimeNs() {
        return timesNs[(int) head.get() & mask];
    }

    long headArrivalNs() {
        return arrivalsNs[(int) head.get() & mask];
    }

    void pop() {
        head.set(head.get() + 1);
    }
}
