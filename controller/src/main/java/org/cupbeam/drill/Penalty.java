package org.cupbeam.drill;

/** What a miss that overshoots costs, beyond the ball itself, where it does not end the run anyway. */
public enum Penalty implements Worded {
    /** Nothing. */
    NONE,
    /** One of the balls still to putt in the visit; the run ends if that was the last. */
    LOSE_BALL,
    /** A step back: a new visit to the station before. At the first station nothing. */
    BACK_ONE,
    /** The run. */
    END_RUN
}
