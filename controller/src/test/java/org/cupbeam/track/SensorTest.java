package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SensorTest {
    private static final long MS = 1_000_000;
    private static final long SHORTEST_NS = 7 * MS;
    private static final long FLICKER_NS = MS;

    private final Sensor sensor = new Sensor(SHORTEST_NS, FLICKER_NS);
    private final List<String> pulses = new ArrayList<>();

    @Test
    void aPulseIsOverOnceItHasBeenQuietForAWhile() {
        edge(true, 10 * MS);
        assertThat(sensor.closesNs()).isEqualTo(Sensor.NEVER);
        assertThat(sensor.blockedSinceNs()).isEqualTo(10 * MS);
        edge(false, 50 * MS);
        assertThat(sensor.closesNs()).isEqualTo(50 * MS + Sensor.QUIET_NS);
        assertThat(sensor.isOpen()).isTrue();
        assertThat(sensor.blockedSinceNs()).isEqualTo(Sensor.NEVER);

        passes(60 * MS);

        assertThat(pulses).containsExactly("10.0-50.0");
        assertThat(sensor.isOpen()).isFalse();
        assertThat(sensor.closesNs()).isEqualTo(Sensor.NEVER);
    }

    @Test
    void chatterAtEitherEndDelaysBothAlike() {
        blocked(10.0, 10.2).blocked(10.5, 10.6).blocked(10.9, 50.0).blocked(50.3, 50.4).blocked(50.7, 51.1);

        passes(60 * MS);

        assertThat(pulses).containsExactly("10.0-50.0");
    }

    @Test
    void eachFlickerPutsOffTheEnd() {
        blocked(10, 50).blocked(51, 51.2).blocked(52.3, 52.4);

        assertThat(sensor.closesNs()).isEqualTo(52_400_000 + Sensor.QUIET_NS);
    }

    @Test
    void aSpikeIsNoPulse() {
        blocked(10, 10.1).blocked(20, 26.9);

        passes(60 * MS);

        assertThat(pulses).isEmpty();
        assertThat(sensor.blockedWithin(0, 60 * MS)).isFalse();
    }

    @Test
    void manySpikesMergeIntoAPulseOnlyWhileTheyFollowCloselyAndBlockForAWhile() {
        blocked(10, 12).blocked(13, 15).blocked(16, 18);
        passes(30 * MS);
        assertThat(pulses).containsExactly("10.0-18.0");

        blocked(40, 42).blocked(44, 46).blocked(48, 50);
        passes(90 * MS);
        assertThat(pulses).hasSize(1);
    }

    @Test
    void whatFollowsAfterAPauseIsAnotherPulse() {
        blocked(10, 20).blocked(21.6, 40);

        passes(60 * MS);

        assertThat(pulses).containsExactly("10.0-20.0", "21.6-40.0");
    }

    @Test
    void aLevelThatIsRepeatedSaysNothing() {
        edge(false, MS);
        edge(true, 10 * MS);
        edge(true, 30 * MS);
        edge(false, 40 * MS);
        edge(false, 41 * MS);
        assertThat(sensor.closesNs()).isEqualTo(40 * MS + Sensor.QUIET_NS);

        passes(60 * MS);

        assertThat(pulses).containsExactly("10.0-40.0");
    }

    @Test
    void aPulseTouchesATimeDownToItsVeryBorders() {
        blocked(10, 50);
        passes(60 * MS);

        assertThat(sensor.blockedWithin(0, 10 * MS)).isTrue();
        assertThat(sensor.blockedWithin(0, 10 * MS - 1)).isFalse();
        assertThat(sensor.blockedWithin(50 * MS, 70 * MS)).isTrue();
        assertThat(sensor.blockedWithin(50 * MS + 1, 70 * MS)).isFalse();
        assertThat(sensor.blockedWithin(20 * MS, 30 * MS)).isTrue();
        assertThat(sensor.blockedWithin(0, 70 * MS)).isTrue();
    }

    @Test
    void whileItIsBlockedItIsBlockedFromThenOn() {
        edge(true, 10 * MS);

        assertThat(sensor.blockedWithin(11 * MS, 12 * MS)).isTrue();
        assertThat(sensor.blockedWithin(0, 10 * MS)).isTrue();
        assertThat(sensor.blockedWithin(0, 10 * MS - 1)).isFalse();
        assertThat(sensor.blockedWithin(1000 * MS, 2000 * MS)).isTrue();
    }

    @Test
    void betweenItsFallAndItsEndAPulseIsAsLongAsItHasBeen() {
        blocked(10, 50);

        assertThat(sensor.blockedWithin(50 * MS, 51 * MS)).isTrue();
        assertThat(sensor.blockedWithin(50 * MS + 1, 51 * MS)).isFalse();
        blocked(60, 61);
        assertThat(sensor.blockedWithin(60 * MS, 61 * MS)).as("too short to be one").isFalse();
    }

    @Test
    void itRemembersTheLastEight() {
        for (int i = 0; i < 20; i++) {
            blocked(100 * i, 100 * i + 10);
        }
        passes(3000 * MS);

        assertThat(pulses).hasSize(20);
        assertThat(sensor.blockedWithin(1200 * MS, 1210 * MS)).isTrue();
        assertThat(sensor.blockedWithin(0, 1110 * MS)).as("forgotten").isFalse();
        assertThat(sensor.firstOnWithin(0, 3000 * MS)).isEqualTo(1200 * MS);
    }

    @Test
    void theFirstThatBeganWithinATimeMayStillLast() {
        blocked(10, 50);
        edge(true, 80 * MS);

        assertThat(sensor.firstOnWithin(0, 100 * MS)).isEqualTo(10 * MS);
        assertThat(sensor.firstOnWithin(10 * MS + 1, 100 * MS)).isEqualTo(80 * MS);
        assertThat(sensor.firstOnWithin(10 * MS + 1, 80 * MS - 1)).isEqualTo(Sensor.NEVER);
        assertThat(sensor.endOf(10 * MS)).isEqualTo(50 * MS);
        assertThat(sensor.endOf(80 * MS)).isEqualTo(Sensor.NEVER);
    }

    private SensorTest blocked(double fromMs, double toMs) {
        edge(true, Math.round(fromMs * MS));
        edge(false, Math.round(toMs * MS));
        return this;
    }

    private void edge(boolean active, long timeNs) {
        passes(timeNs);
        sensor.edge(active, timeNs);
    }

    /** As its owner does before each edge. */
    private void passes(long timeNs) {
        if (sensor.closesNs() <= timeNs && sensor.close()) {
            pulses.add(sensor.lastOnNs() / 1e6 + "-" + sensor.lastOffNs() / 1e6);
        }
    }
}
