package org.cupbeam.link;

import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;

/**
 * How long to wait before the next try: 1 s, and twice as long each time, up to 60 s; of that a random part between
 * half and all, so that the lanes of a studio do not all come at once when its broker does.
 */
final class Backoff {
    private static final long FIRST_NS = TimeUnit.SECONDS.toNanos(1);
    private static final long LONGEST_NS = TimeUnit.SECONDS.toNanos(60);

    private final RandomGenerator random;
    private long nextNs = FIRST_NS;

    Backoff(RandomGenerator random) {
        this.random = random;
    }

    long nextNs() {
        long wait = nextNs;
        nextNs = Math.min(LONGEST_NS, nextNs * 2);
        return wait / 2 + random.nextLong(wait / 2 + 1);
    }

    /** All has been well for long enough. */
    void reset() {
        nextNs = FIRST_NS;
    }
}
