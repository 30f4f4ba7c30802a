package org.cupbeam.track;

/** Whoever takes what the tracker found. Called on the tracker's own thread, in the order in which things are settled. */
public interface TrackSink {
    /** One putt, resolved. */
    void attempt(Attempt attempt);

    /** A ball came of which it cannot be told what became of it, since a sensor that would say is out of order. */
    default void untold(long timeNs) {
    }

    /** The pedal was used. */
    default void gesture(Gesture gesture, long timeNs) {
    }

    /** What a foot can say with one pedal. */
    enum Gesture {
        /** Short press: the last ball missed short, unseen. */
        MISSED_UNSEEN,
        /** Two short presses: take the last attempt back. */
        TAKE_BACK,
        /** Long press: the next player, or the end. */
        NEXT
    }
}
