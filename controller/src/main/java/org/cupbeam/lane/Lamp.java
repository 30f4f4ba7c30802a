package org.cupbeam.lane;

/** A light beside the hole, for whoever has no screen in sight. Called on the lane's thread; must not wait. */
@FunctionalInterface
public interface Lamp {
    /** No lamp is fitted. */
    Lamp NONE = shown -> { };

    /** Called when what it shows changes. */
    void show(State state);

    /** What it can show. */
    enum State {
        /** Putt. */
        READY,
        /** A beam sees something. */
        BALL_SEEN,
        /** A putt was holed, a moment ago. */
        HOLED,
        /** A putt ran past the limit, a moment ago. */
        OVERSHOOT,
        /** Something needs somebody: see the lane's health. */
        FAULT
    }
}
