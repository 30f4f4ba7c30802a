package org.cupbeam.drill;

/** What ended a run. */
public enum EndedBy implements Worded {
    /** No ball left to putt in the visit, and the station not cleared. */
    OUT_OF_BALLS,
    /** The last station was cleared. */
    CLEARED_ALL,
    /** A miss that overshot, in a drill whose penalty that is. */
    OVERSHOOT,
    /** The duel was decided: nobody else in play, and more stations cleared than each other player. */
    DUEL,
    /** By hand, whatever the state of play. */
    STOPPED
}
