package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import org.cupbeam.lane.Lamp.State;
import org.junit.jupiter.api.Test;

class PinLampTest {
    private long nowNs = 5;
    private final StringBuilder pin = new StringBuilder();
    private final PinLamp lamp = new PinLamp(lit -> pin.append(lit ? '#' : '.'), () -> nowNs);

    @Test
    void eachStateHasARhythmOfItsOwn() {
        Map<State, String> rhythms = new EnumMap<>(State.class);
        for (State state : State.values()) {
            StringBuilder seen = new StringBuilder();
            for (int beat = 0; beat < 16; beat++) {
                seen.append(Rhythm.isLit(state, beat * Rhythm.BEAT_NS) ? '#' : '.');
            }
            rhythms.put(state, seen.toString());
        }
        assertThat(new HashSet<>(rhythms.values())).hasSize(State.values().length);
        assertThat(rhythms.get(State.OVERSHOOT)).startsWith("###.###.");
        assertThat(rhythms.get(State.FAULT)).startsWith("#.......#");
    }

    @Test
    void thePinChangesOnlyWhenTheLightDoes() {
        for (int step = 0; step < 8; step++) {
            lamp.doWork();
            nowNs += Rhythm.BEAT_NS / 4;
        }
        assertThat(pin).hasToString("#");

        lamp.show(State.HOLED);
        for (int step = 0; step < 12; step++) {
            lamp.doWork();
            nowNs += Rhythm.BEAT_NS / 4;
        }
        assertThat(pin).hasToString("#.#");
    }

    @Test
    void aBallInABeamDarkensItAtOnce() {
        lamp.doWork();
        lamp.show(State.BALL_SEEN);
        lamp.doWork();
        assertThat(pin).hasToString("#.");
    }
}
