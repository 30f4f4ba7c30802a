package org.cupbeam.track;

/** Why a sensor is not believed, as far as edges tell. */
public enum Doubt {
    /** Nothing is wrong. */
    NONE,
    /** On for longer than anything in play. */
    STUCK,
    /** Turns oftener than anything in play. */
    CHATTERING,
    /** On at rest, and off for moments: the wrong way round. */
    REVERSED;

    /** Whether the sensor's word counts. */
    public boolean isBelieved() {
        return this == NONE;
    }
}
