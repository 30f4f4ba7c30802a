package org.cupbeam.lane;

import java.util.function.LongSupplier;

/**
 * Sees that the lane's loop goes round. It waits for nothing and does little at a time, so when it does not come back
 * within seconds something is wrong with the program, and starting it again is the cure: the journal has everything.
 */
final class Watchdog {
    static final long PATIENCE_NS = 10_000_000_000L;

    private final LongSupplier nanoTime;
    private final LongSupplier lastStepNs;
    private final Runnable bite;
    private final Runnable sign;
    private long looksHung;

    /**
     * @param nanoTime   the machine's monotonic clock
     * @param lastStepNs when the loop last began a step, on the same
     * @param bite       what to do, once, when it does not begin another
     * @param sign       what to do at each look as long as it does
     */
    Watchdog(LongSupplier nanoTime, LongSupplier lastStepNs, Runnable bite, Runnable sign) {
        this.nanoTime = nanoTime;
        this.lastStepNs = lastStepNs;
        this.bite = bite;
        this.sign = sign;
    }

    /** One look. A whole process that was stopped for a while is given time until the next before it is blamed. */
    int doWork() {
        looksHung = nanoTime.getAsLong() - lastStepNs.getAsLong() > PATIENCE_NS ? looksHung + 1 : 0;
        if (looksHung == 0) {
            sign.run();
        } else if (looksHung == 2) {
            bite.run();
        }
        return 0;
    }
}
