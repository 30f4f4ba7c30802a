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
    REVERSED,
    /** Says nothing where it should. */
    SILENT,
    /** May say nothing where it should; believed nevertheless. */
    DRY,
    /** More balls come back past it and its fellow than ever went there. */
    SWAPPED,
    /** Does not stand as far from its fellow as the rig file says. */
    MISPLACED;

    /** Whether the sensor's word counts. */
    public boolean isBelieved() {
        return this == NONE || this == DRY;
    }
}
