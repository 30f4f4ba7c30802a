package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.track.CupWatch.Pulse;
import org.junit.jupiter.api.Test;

class CupWatchTest {
    private static final long MS = 1_000_000;

    private final CupWatch watch = new CupWatch();

    @Test
    void aBallFallsAndRattles() {
        assertThat(pulse(1000, 1025)).isEqualTo(Pulse.DROP);
        assertThat(pulse(1060, 1072)).isEqualTo(Pulse.RATTLE);
        assertThat(pulse(1095, 1100)).isEqualTo(Pulse.RATTLE);
        assertThat(watch.settlesNs()).isGreaterThan(1100 * MS).isLessThanOrEqualTo(2000 * MS);
        assertThat(watch.takeDrop()).isEqualTo(1000 * MS);
    }

    @Test
    void aDropIsTakenOnce() {
        pulse(1000, 1025);
        watch.takeDrop();

        assertThat(watch.settlesNs()).isEqualTo(Sensor.NEVER);
        assertThat(watch.takeDrop()).isEqualTo(Sensor.NEVER);
    }

    @Test
    void withNothingSeenNothingWaits() {
        assertThat(watch.settlesNs()).isEqualTo(Sensor.NEVER);
    }

    @Test
    void whatBlocksForLongIsAHandAndSoIsAllThatFollowsIt() {
        assertThat(pulse(1000, 1200)).isEqualTo(Pulse.HAND);
        assertThat(pulse(1210, 1220)).isEqualTo(Pulse.HAND);
        assertThat(pulse(1600, 1620)).as("still about").isEqualTo(Pulse.HAND);
        assertThat(watch.settlesNs()).isEqualTo(Sensor.NEVER);
        assertThat(pulse(2200, 2220)).as("long after").isEqualTo(Pulse.DROP);
    }

    @Test
    void fingersThatComeFirstAreTheHands() {
        assertThat(pulse(1000, 1008)).as("as yet").isEqualTo(Pulse.DROP);
        assertThat(pulse(1020, 1900)).isEqualTo(Pulse.HAND);

        assertThat(watch.settlesNs()).isEqualTo(Sensor.NEVER);
    }

    @Test
    void aPulseThatComesLateMayBeTheNextBalls() {
        pulse(1000, 1025);

        assertThat(pulse(1025 + 150, 1025 + 170)).isEqualTo(Pulse.LATE_RATTLE);
        assertThat(pulse(2000, 2020)).isEqualTo(Pulse.DROP);
    }

    @Test
    void theLongestDropIsStillOne() {
        assertThat(watch.pulse(0, CupWatch.LONGEST_DROP_NS)).isEqualTo(Pulse.DROP);
        assertThat(new CupWatch().pulse(0, CupWatch.LONGEST_DROP_NS + 1)).isEqualTo(Pulse.HAND);
    }

    private Pulse pulse(long onMs, long offMs) {
        return watch.pulse(onMs * MS, offMs * MS);
    }
}
