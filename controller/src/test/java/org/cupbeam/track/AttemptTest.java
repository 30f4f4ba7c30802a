package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.track.Attempt.Outcome;
import org.junit.jupiter.api.Test;

class AttemptTest {
    private static final double NONE = Double.NaN;

    @Test
    void aMissOvershootsByItsFinish() {
        assertThat(missed(914.5, 880, 940).overshoots(914.4)).isTrue();
        assertThat(missed(914.4, 880, 940).overshoots(914.4)).isFalse();
        assertThat(missed(-2000, NONE, NONE).overshoots(914.4)).isFalse();
    }

    @Test
    void aMissWithoutAFinishOvershootsOnlyIfItSurelyDid() {
        assertThat(missed(NONE, 995, NONE).overshoots(914.4)).isTrue();
        assertThat(missed(NONE, 800, NONE).overshoots(914.4)).isFalse();
        assertThat(missed(NONE, NONE, 878).overshoots(914.4)).isFalse();
    }

    @Test
    void aHoledPuttNeverOvershoots() {
        Attempt holed = new Attempt(0, 1, Outcome.HOLED, NONE, NONE, NONE, NONE, 1500, 2000, false);

        assertThat(holed.holed()).isTrue();
        assertThat(holed.overshoots(914.4)).isFalse();
    }

    @Test
    void aMissThatSomebodyEntersIsShortOfWhereItWouldHaveBeenSeen() {
        Attempt unseen = Attempt.unseen(7, -321);

        assertThat(unseen.holed()).isFalse();
        assertThat(unseen.timeNs()).isEqualTo(7);
        assertThat(unseen.betweenHighMm()).isEqualTo(-321);
        assertThat(unseen.finishMm()).isNaN();
    }

    private static Attempt missed(double finishMm, double lowMm, double highMm) {
        return new Attempt(0, 1, Outcome.MISSED, finishMm, 10, lowMm, highMm, NONE, NONE, false);
    }
}
