package org.cupbeam.studio.sim;

import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;

/** Simulated time, and what is to happen in it: the one scheduler, whose order of things is the seed's. */
final class Agenda {
    static final long MS = 1_000_000;
    static final long S = 1_000 * MS;

    private record Due(long atNs, long tie, Runnable what) implements Comparable<Due> {
        @Override
        public int compareTo(Due other) {
            int byTime = Long.compare(atNs, other.atNs);
            return byTime != 0 ? byTime : Long.compare(tie, other.tie);
        }
    }

    private final PriorityQueue<Due> due = new PriorityQueue<>();
    private long nowNs = 1;
    private long count;
    private long hash;

    long nowNs() {
        return nowNs;
    }

    void after(long ns, Runnable what) {
        due.add(new Due(nowNs + Math.max(0, ns), count++, what));
    }

    /**
     * Lets happen what is due, one after the other, until something holds or so much time has passed. A part that waits
     * for something calls this too: the others go on meanwhile.
     *
     * @return whether it holds
     */
    boolean runUntil(BooleanSupplier holds, long limitNs) {
        long endNs = nowNs + limitNs;
        while (!holds.getAsBoolean()) {
            if (due.isEmpty() || due.peek().atNs() > endNs) {
                nowNs = endNs;
                return false;
            }
            Due next = due.poll();
            nowNs = Math.max(nowNs, next.atNs());
            next.what().run();
        }
        return true;
    }

    /** Something happened that is to happen again when the seed is played again. */
    void note(String what) {
        hash = hash * 31 + what.hashCode();
        hash = hash * 31 + nowNs;
    }

    /** All that was noted, and when, in one number. */
    long trace() {
        return hash;
    }
}
