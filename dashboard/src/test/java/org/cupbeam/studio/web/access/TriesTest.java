package org.cupbeam.studio.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class TriesTest {
    private Instant now = Instant.EPOCH;
    private final Tries tries = new Tries(() -> now);

    @Test
    void fiveTriesAreFreeThenTheWaitDoubles() {
        for (int i = 0; i < 5; i++) {
            assertThat(tries.ask("10.0.0.7")).isZero();
        }
        for (int seconds = 1; seconds <= 512; seconds *= 2) {
            assertThat(tries.ask("10.0.0.7")).isEqualTo(Duration.ofSeconds(seconds));
            passes(Duration.ofSeconds(seconds));
            assertThat(tries.ask("10.0.0.7")).isZero();
        }
        assertThat(tries.ask("10.0.0.7")).isEqualTo(Duration.ofMinutes(15));
    }

    @Test
    void askingTooSoonMakesTheWaitNoLonger() {
        fail("10.0.0.7", 5);
        for (int i = 0; i < 100; i++) {
            assertThat(tries.ask("10.0.0.7")).isEqualTo(Duration.ofSeconds(1));
        }
    }

    @Test
    void otherAddressesHaveTriesOfTheirOwn() {
        fail("10.0.0.7", 5);

        assertThat(tries.ask("10.0.0.8")).isZero();
    }

    @Test
    void oneRightTryForgivesTheWrongOnes() {
        fail("10.0.0.7", 4);
        tries.ask("10.0.0.7");
        tries.succeeded("10.0.0.7");

        assertThat(tries.ask("10.0.0.7")).isZero();
    }

    @Test
    void manyAddressesTogetherHaveToWaitAsWell() {
        for (int i = 0; i < 20; i++) {
            assertThat(tries.ask("10.0.1." + i)).isZero();
        }
        assertThat(tries.ask("10.0.2.1")).isEqualTo(Duration.ofSeconds(1));

        int made = 0;
        for (int i = 0; i < 24 * 3_600; i++) {
            passes(Duration.ofSeconds(1));
            made += tries.ask("10.9." + i / 250 + "." + i % 250).isZero() ? 1 : 0;
        }
        assertThat(made).as("guesses in a day, from as many addresses as one likes").isBetween(2_000, 3_000);
    }

    @Test
    void whoeverSignedInBeforeIsNotKeptOutByGuessers() {
        tries.ask("10.0.0.2");
        tries.succeeded("10.0.0.2");
        for (int i = 0; i < 40; i++) {
            tries.ask("10.0.1." + i);
        }

        assertThat(tries.ask("10.0.3.3")).isPositive();
        assertThat(tries.ask("10.0.0.2")).isZero();
    }

    @Test
    void theWholeOfAnIpv6NetworkIsOneAddress() {
        for (int i = 0; i < 5; i++) {
            tries.ask("2001:db8:1:2:" + i + "::1");
        }

        assertThat(tries.ask("2001:db8:1:2:ffff::9")).isPositive();
        assertThat(tries.ask("2001:db8:1:3::1")).isZero();
    }

    @Test
    void aLongQuietSpellForgets() {
        fail("10.0.0.7", 9);
        passes(Duration.ofHours(7));

        assertThat(tries.ask("10.0.0.7")).isZero();
        assertThat(tries.ask("10.0.0.7")).isZero();
    }

    private void fail(String address, int times) {
        for (int i = 0; i < times; i++) {
            passes(Duration.ofMinutes(16));
            tries.ask(address);
        }
    }

    private void passes(Duration time) {
        now = now.plus(time);
    }
}
