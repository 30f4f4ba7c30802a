package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class BackoffTest {
    private static double seconds(long ns) {
        return ns / (double) TimeUnit.SECONDS.toNanos(1);
    }

    @Test
    void waitsGrowFromOneSecondToSixtyAndAreDrawnFromTheirUpperHalf() {
        for (int seed = 0; seed < 100; seed++) {
            Backoff backoff = new Backoff(new Random(seed));
            double full = 1;
            for (int i = 0; i < 12; i++) {
                assertThat(seconds(backoff.nextNs())).as("seed " + seed).isBetween(full / 2, full);
                full = Math.min(60, full * 2);
            }
        }
    }

    @Test
    void twoLanesDoNotComeAtTheSameMoment() {
        assertThat(new Backoff(new Random(1)).nextNs()).isNotEqualTo(new Backoff(new Random(2)).nextNs());
    }

    @Test
    void whenAllHasBeenWellItBeginsAgainAtOneSecond() {
        Backoff backoff = new Backoff(new Random(1));
        for (int i = 0; i < 12; i++) {
            backoff.nextNs();
        }
        backoff.reset();
        assertThat(seconds(backoff.nextNs())).isBetween(0.5, 1.0);
    }
}
