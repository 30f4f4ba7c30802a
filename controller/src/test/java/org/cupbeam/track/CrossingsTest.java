package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CrossingsTest {
    private static final long BORN_NS = 1_790_000_000_000_000_000L;

    private final Crossings crossings = new Crossings(3);

    @Test
    void timesAreCountedFromTheFirstAndNothingIsLostOfALargeClock() {
        crossings.begin(BORN_NS);

        assertThat(crossings.seconds(BORN_NS + 1)).isEqualTo(1e-9);
        assertThat(crossings.seconds(BORN_NS + 3_123_456_789L)).isCloseTo(3.123456789, within(1e-15));
        assertThat(crossings.timeNs(crossings.seconds(BORN_NS + 3_123_456_789L))).isEqualTo(BORN_NS + 3_123_456_789L);
        assertThat(crossings.timeNs(crossings.seconds(BORN_NS - 77))).isEqualTo(BORN_NS - 77);
    }

    @Test
    void theLastThatIsKnownToHaveMovedIsTheEndOfACrossingOrTheBeginOfAStop() {
        crossings.begin(0);
        crossings.add(0, 0, 0.04);
        assertThat(crossings.lastS()).isEqualTo(0.04);
        crossings.add(2, 0.5, Double.NaN);
        assertThat(crossings.lastS()).isEqualTo(0.5);
        assertThat(crossings.lastBeam()).isEqualTo(2);
        assertThat(crossings.count()).isEqualTo(2);
    }

    @Test
    void whatIsTakenBackIsNoLongerThere() {
        crossings.begin(0);
        crossings.add(0, 0, 0.04);
        crossings.add(1, 0.1, 0.15);
        crossings.removeFrom(1);

        assertThat(crossings.count()).isOne();
        assertThat(crossings.lastBeam()).isZero();
        assertThat(crossings.offS(0)).isEqualTo(0.04);
    }

    @Test
    void anotherBallBeginsEmpty() {
        crossings.begin(0);
        crossings.add(0, 0, 0.04);
        crossings.begin(BORN_NS);

        assertThat(crossings.count()).isZero();
        assertThat(crossings.originNs()).isEqualTo(BORN_NS);
    }
}
