package org.cupbeam.green;

/**
 * The first part of a putt: a ball struck without spin slides, and friction turns it until it rolls.
 *
 * <p>Mechanics of a uniform sphere; the friction is that of sliding, far above what slows a ball that rolls.
 */
public final class Skid {
    private Skid() {
    }

    /** The speed at which a ball launched without spin begins to roll, whatever the friction: 5/7 of the launch. */
    public static double rollSpeedMmPerS(double launchMmPerS) {
        return 5.0 / 7.0 * launchMmPerS;
    }

    /** How long it slides, in s: 2v/(7μg). */
    public static double timeS(double launchMmPerS, double slidingFriction) {
        return 2 * launchMmPerS / (7 * slidingFriction * Slope.GRAVITY_MM_PER_S2);
    }

    /** How far it slides, in mm: 12v²/(49μg). */
    public static double distanceMm(double launchMmPerS, double slidingFriction) {
        return 12 * launchMmPerS * launchMmPerS / (49 * slidingFriction * Slope.GRAVITY_MM_PER_S2);
    }
}
