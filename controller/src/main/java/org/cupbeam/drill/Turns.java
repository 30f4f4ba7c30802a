package org.cupbeam.drill;

/** How the players of a duel take turns. */
public enum Turns implements Worded {
    /** A visit to a station each. */
    STATION,
    /** An attempt each. */
    BALL
}
