package org.cupbeam.edge.practice;

import java.util.concurrent.TimeUnit;

/** How time passes while a lane is played live: the clock that its edges are stamped with, and waiting on it. */
public interface Tempo {
    /** The time now, ns, on a monotonic clock. */
    long nowNs();

    /** How many times as fast it runs as the machine's own. */
    default double factor() {
        return 1;
    }

    /** Waits until that time on the same clock. */
    void awaitNs(long timeNs) throws InterruptedException;

    /** The machine's own monotonic clock. */
    static Tempo real() {
        return times(1);
    }

    /** A clock that starts at the machine's and runs so many times as fast. */
    static Tempo times(double factor) {
        if (!(factor > 0 && factor <= 1000)) {
            throw new IllegalArgumentException("time may run up to 1000 times as fast as it does, not " + factor);
        }
        return new Tempo() {
            private final long startNs = System.nanoTime();

            @Override
            public long nowNs() {
                return startNs + Math.round((System.nanoTime() - startNs) * factor);
            }

            @Override
            public double factor() {
                return factor;
            }

            @Override
            public void awaitNs(long timeNs) throws InterruptedException {
                long leftNs = timeNs - nowNs();
                while (leftNs > 0) {
                    TimeUnit.NANOSECONDS.sleep(Math.round(Math.ceil(leftNs / factor)));
                    leftNs = timeNs - nowNs();
                }
            }
        };
    }
}
