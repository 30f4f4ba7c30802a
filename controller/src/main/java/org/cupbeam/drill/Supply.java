package org.cupbeam.drill;

/** Where a visit's balls come from. */
public enum Supply implements Worded {
    /** Each visit starts with the drill's count of balls. */
    EVERY_STATION,
    /** The run has the drill's count of balls: a missed one is gone, a holed one comes back for the next visit. */
    WHOLE_RUN
}
