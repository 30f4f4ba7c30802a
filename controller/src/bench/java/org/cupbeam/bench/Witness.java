package org.cupbeam.bench;

import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;

/**
 * The clocks of a lane, which tell where its time goes by who asks them: the lane's thread looks at the wall clock once it
 * has resolved an attempt, the journal's thread at the other as each of its steps begins. The monotonic one can be set
 * ahead, so that nobody has to wait between putts.
 */
final class Witness implements LongSupplier, InstantSource {
    private static final int STEPS = 64;

    private final AtomicLong aheadNs = new AtomicLong();
    private final long[] stepsNs = new long[STEPS];
    private final AtomicInteger steps = new AtomicInteger();
    private volatile long earliestNs;
    private volatile long resolvedNs;

    /** The monotonic clock shows this time now, if it was not later already. */
    void goAheadTo(long timeNs) {
        aheadNs.accumulateAndGet(timeNs - System.nanoTime(), Math::max);
    }

    /** Looks anew, for an attempt that is resolved no sooner than then. */
    void look(long notBeforeNs) {
        earliestNs = notBeforeNs;
        resolvedNs = 0;
        steps.set(0);
    }

    /** When the lane's thread first looked at the wall clock, by {@link System#nanoTime()}. */
    long resolvedNs() {
        return resolvedNs;
    }

    /** When the journal's thread began the step that found it; 0 where that was not seen. */
    long writingNs() {
        return step(0);
    }

    /** When it began the step after that; 0 where it had not yet. */
    long writtenNs() {
        return step(1);
    }

    private long step(int further) {
        int count = steps.get();
        for (int i = 0; i + further < count; i++) {
            if (stepsNs[i] >= resolvedNs) {
                return stepsNs[i + further];
            }
        }
        return 0;
    }

    @Override
    public long getAsLong() {
        long now = System.nanoTime();
        if (Thread.currentThread().getName().equals("journal")) {
            int at = steps.get();
            if (at < STEPS) {
                stepsNs[at] = now;
                steps.set(at + 1);
            }
        }
        return now + aheadNs.get();
    }

    @Override
    public Instant instant() {
        long now = System.nanoTime();
        if (resolvedNs == 0 && now >= earliestNs && Thread.currentThread().getName().equals("lane")) {
            resolvedNs = now;
        }
        return Instant.now();
    }
}
