package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;

/** What a tracker told. */
final class Played implements TrackSink {
    record Pressed(Gesture gesture, double atS) {
    }

    final List<Attempt> attempts = new ArrayList<>();
    final List<Pressed> gestures = new ArrayList<>();

    @Override
    public void attempt(Attempt attempt) {
        attempts.add(attempt);
    }

    @Override
    public void gesture(Gesture gesture, long timeNs) {
        gestures.add(new Pressed(gesture, timeNs / 1e9));
    }

    Attempt only() {
        assertThat(attempts).hasSize(1);
        return attempts.get(0);
    }

    long holed() {
        return attempts.stream().filter(Attempt::holed).count();
    }
}
