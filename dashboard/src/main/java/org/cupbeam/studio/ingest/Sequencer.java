package org.cupbeam.studio.ingest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Puts one journal's items in order. What comes again is passed over; what comes early is held (a bounded number of
 * items, the nearest ones) until what lies before it has come. No clock, no thread.
 *
 * @param <T> what is put in order
 */
final class Sequencer<T> {
    /** Sequence numbers that never came, both ends included. */
    record Missing(long from, long to) {
    }

    /** No lane has sent so many events in its life: about a year of one each 3 s. */
    static final long FURTHEST_AHEAD = 10_000_000;

    private final int mostHeld;
    private final Early<T> held;
    private long next;
    private long gapSinceNs;
    private int knocks;

    /**
     * @param last     the last number that is already kept; 0 for none
     * @param mostHeld how many early items are held at most
     * @param held     where those are held; nothing as yet
     */
    Sequencer(long last, int mostHeld, Early<T> held) {
        this.next = last + 1;
        this.mostHeld = mostHeld;
        this.held = held;
    }

    /** Takes one item. @return what is now in order, the item itself among it or not */
    List<T> offer(long sequence, T item, long nowNs) {
        if (sequence < next) {
            return List.of();
        }
        if (sequence == next) {
            next++;
            gapSinceNs = nowNs; // whoever sends goes on: what lies further ahead may be somebody else's
            return follow(item);
        }
        hold(sequence, item, nowNs);
        return List.of();
    }

    /** Everything up to a number is kept, be it by somebody else. @return what follows it in order */
    List<T> keptUpTo(long sequence) {
        if (sequence < next) {
            return List.of();
        }
        next = sequence + 1;
        held.dropBelow(next);
        boolean goesOn = !held.isEmpty() && held.first() == next;
        return goesOn ? skip() : List.of();
    }

    /** Whether a number is so far ahead that no gap before it can be believed. */
    boolean beyondBelief(long sequence) {
        return sequence - next > FURTHEST_AHEAD;
    }

    /** Whether a number has been given out already. */
    boolean isPast(long sequence) {
        return sequence < next;
    }

    /** Lets the furthest of what is held go, if anything is. */
    void letGo() {
        held.dropLast();
    }

    /** The last number that was given out in order; 0 for none. */
    long last() {
        return next - 1;
    }

    /** How large what is held is. */
    long heldBytes() {
        return held.bytes();
    }

    int held() {
        return held.count();
    }

    /**
     * The gap that is being waited for, once the lane has sent what follows it again and again without filling it: it
     * no longer has those events, and waiting longer would keep everything after them from the store.
     *
     * @param patienceNs how long a gap is waited for at least, ns
     * @param mostKnocks how often the first item after the gap must have come again
     */
    Optional<Missing> overdue(long nowNs, long patienceNs, int mostKnocks) {
        boolean waitedEnough = !held.isEmpty() && nowNs - gapSinceNs >= patienceNs && knocks >= mostKnocks;
        return waitedEnough ? Optional.of(new Missing(next, held.first() - 1)) : Optional.empty();
    }

    /** Gives the gap up. @return what follows it in order */
    List<T> skip() {
        next = held.first() + 1;
        return follow(held.takeFirst());
    }

    private List<T> follow(T item) {
        List<T> inOrder = new ArrayList<>(1 + held.count());
        inOrder.add(item);
        while (!held.isEmpty() && held.first() == next) {
            inOrder.add(held.takeFirst());
            next++;
        }
        knocks = 0;
        return inOrder;
    }

    private void hold(long sequence, T item, long nowNs) {
        if (held.isEmpty()) {
            gapSinceNs = nowNs;
            knocks = 0;
        } else if (sequence == held.first()) {
            knocks++;
        } else if (sequence < held.first()) {
            knocks = 0;
        }
        held.put(sequence, item);
        if (held.count() > mostHeld) {
            held.dropLast();
        }
    }
}
