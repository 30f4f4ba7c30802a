package org.cupbeam.green;

/**
 * Rolling along a line with constant deceleration.
 *
 * <p>A deceleration of 0 or less is a slope too steep for the green: the ball never stops, and its stop is infinitely
 * far. A distance that is never reached answers NaN. Speeds are not negative.
 */
public final class Rolling {
    private Rolling() {
    }

    /** How far a ball of this speed still rolls, in mm; infinite where it never stops. */
    public static double stopDistanceMm(double speedMmPerS, double decelerationMmPerS2) {
        return decelerationMmPerS2 > 0
                ? speedMmPerS * speedMmPerS / (2 * decelerationMmPerS2) : Double.POSITIVE_INFINITY;
    }

    /** How long a ball of this speed still rolls, in s; infinite where it never stops. */
    public static double stopTimeS(double speedMmPerS, double decelerationMmPerS2) {
        return decelerationMmPerS2 > 0 ? speedMmPerS / decelerationMmPerS2 : Double.POSITIVE_INFINITY;
    }

    /** The speed from which a ball stops after this distance, in mm/s; NaN where it would never stop. */
    public static double speedToStopMmPerS(double distanceMm, double decelerationMmPerS2) {
        return decelerationMmPerS2 > 0 ? Math.sqrt(2 * decelerationMmPerS2 * distanceMm) : Double.NaN;
    }

    /** The speed left after a distance, in mm/s; NaN where the ball stops before it. */
    public static double speedAfterMmPerS(double speedMmPerS, double decelerationMmPerS2, double distanceMm) {
        return Math.sqrt(speedMmPerS * speedMmPerS - 2 * decelerationMmPerS2 * distanceMm);
    }

    /** The time to cover a distance, in s; NaN where the ball stops before it. Exact near no deceleration, too. */
    public static double timeToS(double speedMmPerS, double decelerationMmPerS2, double distanceMm) {
        if (distanceMm == 0) {
            return 0;
        }
        return 2 * distanceMm / (speedMmPerS + speedAfterMmPerS(speedMmPerS, decelerationMmPerS2, distanceMm));
    }

    /** The distance covered after a time, in mm; once the ball has stopped it stays. */
    public static double distanceMm(double speedMmPerS, double decelerationMmPerS2, double timeS) {
        double rollingS = Math.min(timeS, stopTimeS(speedMmPerS, decelerationMmPerS2));
        return (speedMmPerS - 0.5 * decelerationMmPerS2 * rollingS) * rollingS;
    }
}
