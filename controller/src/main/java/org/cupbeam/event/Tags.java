package org.cupbeam.event;

import org.cupbeam.drill.Worded;

/**
 * What sort of putt a run is made of.
 *
 * @param breaks which way the putt turns, seen from the ball; null where not said
 * @param slope  which way it lies; null where not said
 */
public record Tags(Break breaks, Slope slope) {
    /** Nothing said. */
    public static final Tags NONE = new Tags(null, null);

    /** Which way a putt turns, seen from the ball. */
    public enum Break implements Worded { LEFT_TO_RIGHT, RIGHT_TO_LEFT, STRAIGHT }

    /** Which way a putt lies. */
    public enum Slope implements Worded { UPHILL, DOWNHILL, LEVEL }
}
