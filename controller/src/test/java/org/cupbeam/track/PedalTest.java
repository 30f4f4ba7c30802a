package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.track.TrackSink.Gesture;
import org.junit.jupiter.api.Test;

class PedalTest {
    private static final long MS = 1_000_000;

    private final Pedal pedal = new Pedal();

    @Test
    void aShortPressWaitsForASecondAndIsOneByItselfWhenNoneComes() {
        assertThat(press(1000, 1100)).isNull();
        assertThat(pedal.settlesNs()).isEqualTo(1100 * MS + Pedal.DOUBLE_NS);
        assertThat(pedal.settle()).as("when it was pressed").isEqualTo(1000 * MS);
        assertThat(pedal.settlesNs()).isEqualTo(Sensor.NEVER);
    }

    @Test
    void twoShortPressesAreADoubleAndAThirdBeginsAnew() {
        press(1000, 1100);

        assertThat(press(1300, 1400)).isEqualTo(Gesture.TAKE_BACK);
        assertThat(pedal.settlesNs()).isEqualTo(Sensor.NEVER);
        assertThat(press(1500, 1600)).isNull();
    }

    @Test
    void aLongPressIsToldOnceItIsOver() {
        assertThat(pedal.pressed(0, Pedal.LONG_NS)).isEqualTo(Gesture.NEXT);
        assertThat(pedal.settlesNs()).isEqualTo(Sensor.NEVER);
        assertThat(pedal.pressed(0, Pedal.LONG_NS - 1)).as("short").isNull();
    }

    private Gesture press(long onMs, long offMs) {
        return pedal.pressed(onMs * MS, offMs * MS);
    }
}
