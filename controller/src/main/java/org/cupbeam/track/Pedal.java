package org.cupbeam.track;

import org.cupbeam.track.TrackSink.Gesture;

/** What a foot says with one switch: short, double, long. */
final class Pedal {
    /** A press at least this long is a long one. */
    static final long LONG_NS = 800_000_000;
    /** A second short press within this of the first makes a double. */
    static final long DOUBLE_NS = 450_000_000;

    private long pressedNs;
    private boolean waiting;
    private long waitsUntilNs = Sensor.NEVER;

    /**
     * Takes a press that is over. A short one that waits is settled before a long one comes.
     *
     * @return the gesture that it completes, or null: a short press waits for a second
     */
    Gesture pressed(long onNs, long offNs) {
        if (isLong(onNs, offNs)) {
            return Gesture.NEXT;
        }
        if (waiting) {
            waiting = false;
            waitsUntilNs = Sensor.NEVER;
            return Gesture.TAKE_BACK;
        }
        waiting = true;
        pressedNs = onNs;
        waitsUntilNs = offNs + DOUBLE_NS;
        return null;
    }

    boolean isLong(long onNs, long offNs) {
        return offNs - onNs >= LONG_NS;
    }

    /** When a short press that waits is one by itself. */
    long settlesNs() {
        return waitsUntilNs;
    }

    /** Settles it, and tells when it was pressed. */
    long settle() {
        waiting = false;
        waitsUntilNs = Sensor.NEVER;
        return pressedNs;
    }
}
