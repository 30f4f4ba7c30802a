package org.cupbeam.commission;

/**
 * Where one is.
 *
 * <pre>
 *   a new lane:  SETTLE → FIND each → QUIET → HEIGHT → ROLL → PLACE each → LIMIT → UPHILL → GREEN → DONE
 *   a check:     SETTLE → FIND each → QUIET → DONE
 * </pre>
 * HEIGHT to PLACE need beams, ROLL two of them; UPHILL is left out where balls went both ways, GREEN where any did.
 *
 * @param kind   what is to be done
 * @param sensor whom it is about, in FIND; else null
 * @param beam   which, in PLACE, along the line from 0; else -1
 */
public record Step(Kind kind, Wanted sensor, int beam) {

    /** What is to be done. */
    public enum Kind {
        /** Nobody touches anything: the lines' levels at rest. */
        SETTLE,
        /** One sensor is made to turn. */
        FIND,
        /** A minute with the room's lights on. */
        QUIET,
        /** The beams' height is entered. */
        HEIGHT,
        /** Balls are rolled through all beams. */
        ROLL,
        /** Where a beam stands is entered, or left to the balls. */
        PLACE,
        /** How far past the hole a miss may finish is entered. */
        LIMIT,
        /** The line's slope is entered. */
        UPHILL,
        /** The green's speed is entered. */
        GREEN,
        /** Nothing is left to do. */
        DONE
    }

    static Step of(Kind kind) {
        return new Step(kind, null, -1);
    }

    static Step find(Wanted sensor) {
        return new Step(Kind.FIND, sensor, -1);
    }

    static Step place(int beam) {
        return new Step(Kind.PLACE, null, beam);
    }

    /** Whether somebody has to do something at the sensors, and not only to type. */
    public boolean isDeed() {
        return switch (kind) {
            case SETTLE, FIND, QUIET, ROLL -> true;
            case HEIGHT, PLACE, LIMIT, UPHILL, GREEN, DONE -> false;
        };
    }
}
