package org.cupbeam.link;

import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Waiting in a test for what another thread or process brings about. */
final class Patience {
    private Patience() {
    }

    /** Until it is so; an error after 20 s. */
    static void until(String what, Callable<Boolean> holds) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (!holds.call()) {
            if (System.nanoTime() - end > 0) {
                throw new AssertionError("not within 20 s: " + what);
            }
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
        }
    }

    /** That it stays so for a while. */
    static void stays(String what, long ms, Callable<Boolean> holds) throws Exception {
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(ms);
        while (System.nanoTime() - end < 0) {
            if (!holds.call()) {
                throw new AssertionError("no longer so: " + what);
            }
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
        }
    }
}
