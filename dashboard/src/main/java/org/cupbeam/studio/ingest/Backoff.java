package org.cupbeam.studio.ingest;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * How long to wait before the next try: doubling from the first wait to the longest, each somewhere between half of it
 * and the whole, so that many clients of a broker that comes back do not all knock at once.
 */
final class Backoff {
    private final Duration first;
    private final Duration longest;
    private final RandomGenerator random;
    private int failures;

    Backoff(Duration first, Duration longest, RandomGenerator random) {
        this.first = first;
        this.longest = longest;
        this.random = random;
    }

    /** Another try failed. @return how long to wait before the next */
    Duration failed() {
        int doublings = Math.min(failures++, 20);
        long wholeMs = Math.min(longest.toMillis(), first.toMillis() << doublings);
        return Duration.ofMillis(wholeMs / 2 + random.nextLong(wholeMs / 2 + 1));
    }

    /** How many tries have failed in a row. */
    int failures() {
        return failures;
    }

    void succeeded() {
        failures = 0;
    }
}
