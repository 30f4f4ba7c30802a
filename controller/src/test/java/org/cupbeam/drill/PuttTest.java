package org.cupbeam.drill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PuttTest {
    @Test
    void aHoledPuttNeverOvershoots() {
        assertThat(Putt.sunk().overshoots(0)).isFalse();
        assertThat(Putt.of(true, 2000, Double.NaN)).as("whatever a tracker adds").isEqualTo(Putt.sunk());
    }

    @Test
    void aMissWithoutAFinishOvershootsByHowFarItMustHaveGone() {
        assertThat(Putt.of(false, Double.NaN, 915).overshoots(914.4)).isTrue();
        assertThat(Putt.of(false, Double.NaN, 914.4).overshoots(914.4)).isFalse();
        assertThat(Putt.missed().overshoots(914.4)).isFalse();
    }

    @Test
    void aKnownFinishGoesBeforeABound() {
        Putt putt = Putt.of(false, 900, 950);
        assertThat(putt.overshoots(914.4)).isFalse();
        assertThat(putt).isEqualTo(Putt.missedAt(900));
    }

    @Test
    void lengthsAreKeptAsTheyAreWritten() {
        assertThat(Putt.missedAt(914.4449).finishMm()).isEqualTo(OptionalDouble.of(914.4));
        assertThat(Putt.missedAt(914.4449).overshoots(914.4)).isFalse();
        assertThat(Putt.missedAt(-0.01)).isEqualTo(Putt.missedAt(0));
    }

    @Test
    void whatNoBallDoesIsRefused() {
        assertThatThrownBy(() -> Putt.missedAt(Double.POSITIVE_INFINITY)).hasMessageContaining("Infinity");
        assertThatThrownBy(() -> Putt.missedAt(Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> new Putt(true, OptionalDouble.of(1), OptionalDouble.empty()))
                .hasMessageContaining("no finish");
    }
}
