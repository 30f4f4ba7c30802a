package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BackoffTest {
    private static final Duration FIRST = Duration.ofMillis(200);
    private static final Duration LONGEST = Duration.ofSeconds(30);

    private final Backoff backoff = new Backoff(FIRST, LONGEST, new Random(5));

    @Test
    void waitsLongerEachTimeUpToALimitAndNeverLessThanHalf() {
        long wholeMs = FIRST.toMillis();
        for (int i = 0; i < 60; i++) {
            assertThat(backoff.failed().toMillis()).isBetween(wholeMs / 2, wholeMs);
            wholeMs = Math.min(LONGEST.toMillis(), wholeMs * 2);
        }
    }

    @Test
    void beginsAnewAfterASuccess() {
        for (int i = 0; i < 10; i++) {
            backoff.failed();
        }
        backoff.succeeded();
        assertThat(backoff.failed()).isLessThanOrEqualTo(FIRST);
    }

    @Test
    void isNotTheSameForTwoClients() {
        Backoff other = new Backoff(FIRST, LONGEST, new Random(6));
        assertThat(backoff.failed()).isNotEqualTo(other.failed());
    }
}
