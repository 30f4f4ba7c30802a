package org.cupbeam.green;

/** A slope, given as rise per hundred, and what gravity does along it to a ball that rolls. */
public final class Slope {
    /** Standard gravity in mm/s² (ISO 80000-3). */
    public static final double GRAVITY_MM_PER_S2 = 9806.65;
    /** The share of gravity along the slope that moves a solid sphere; the rest goes into its rotation. */
    public static final double ROLLING_SHARE = 5.0 / 7.0;

    private Slope() {
    }

    /** The slope's angle in radians; positive for a positive rise. */
    public static double angleRad(double percent) {
        return Math.atan(percent / 100);
    }

    /**
     * What gravity adds to a rolling ball's deceleration: (5/7) g sin θ.
     *
     * @param uphillPercent rise per hundred in the direction of travel, uphill positive
     * @return in mm/s²; negative downhill
     */
    public static double pullMmPerS2(double uphillPercent) {
        return ROLLING_SHARE * GRAVITY_MM_PER_S2 * Math.sin(angleRad(uphillPercent));
    }

    /**
     * The downhill grade at and beyond which a ball on a green of this reading never stops: tan θ = 7a/(5g).
     *
     * @param stimpFt the green's reading in ft, above 0
     * @return fall per hundred, above 0
     */
    public static double runawayPercent(double stimpFt) {
        return 100 * GreenSpeed.levelDecelerationMmPerS2(stimpFt) / (ROLLING_SHARE * GRAVITY_MM_PER_S2);
    }

    static double cosine(double percent) {
        return Math.cos(angleRad(percent));
    }
}
