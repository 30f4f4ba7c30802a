package org.cupbeam.green;

/**
 * Green speed: a Stimpmeter's reading in feet, and what it says of a rolling ball's deceleration.
 *
 * <p>The device releases a ball at 6.00 ft/s, and the reading is how far it rolls on the level. With constant
 * deceleration, a = v0²/(2·reading). That is a rolling ball's deceleration, its rotation included: it must not be
 * multiplied by 5/7 again.
 */
public final class GreenSpeed {
    /** Speed of release in mm/s (B. W. Holmes, The Physics Teacher 24, 401, 1986: 6.00 ft/s). */
    public static final double RELEASE_MM_PER_S = 1828.8;
    private static final double MM_PER_FT = 304.8;

    private GreenSpeed() {
    }

    /**
     * Deceleration on the level.
     *
     * @param stimpFt the green's reading in ft, above 0
     * @return in mm/s², above 0
     */
    public static double levelDecelerationMmPerS2(double stimpFt) {
        requirePositive(stimpFt, "a green's reading in ft");
        return RELEASE_MM_PER_S * RELEASE_MM_PER_S / (2 * stimpFt * MM_PER_FT);
    }

    /**
     * Deceleration straight up or down a slope: friction, which the slope lightens by its cosine, and gravity along it.
     *
     * @param stimpFt       the reading as on a level green, in ft, above 0
     * @param uphillPercent rise per hundred along the line, uphill positive
     * @return in mm/s²; 0 or less where a ball that rolls does not stop
     */
    public static double decelerationMmPerS2(double stimpFt, double uphillPercent) {
        return levelDecelerationMmPerS2(stimpFt) * Slope.cosine(uphillPercent) + Slope.pullMmPerS2(uphillPercent);
    }

    /**
     * The reading, as on a level green, of one on which a ball decelerates so: the inverse of
     * {@link #decelerationMmPerS2}.
     *
     * @param decelerationMmPerS2 measured along the line, in mm/s²
     * @param uphillPercent       the line's slope there, uphill positive
     * @return in ft
     * @throws IllegalArgumentException where gravity alone would slow the ball as much or more: no green does that
     */
    public static double stimpFt(double decelerationMmPerS2, double uphillPercent) {
        double friction = (decelerationMmPerS2 - Slope.pullMmPerS2(uphillPercent)) / Slope.cosine(uphillPercent);
        requirePositive(friction, "what friction leaves of a deceleration, in mm/s²,");
        return RELEASE_MM_PER_S * RELEASE_MM_PER_S / (2 * friction * MM_PER_FT);
    }

    /**
     * The level reading from one up and one down the same slope: their harmonic mean (A. D. Brede, USGA Green Section
     * Record 28(6), 10, 1990). Exact but for the slope's cosine: it returns reading/cos θ.
     *
     * @param upFt   reading up the slope in ft, above 0
     * @param downFt reading down the slope in ft, above 0
     * @return in ft
     */
    public static double levelStimpFt(double upFt, double downFt) {
        requirePositive(upFt, "a reading uphill in ft");
        requirePositive(downFt, "a reading downhill in ft");
        return 2 * upFt * downFt / (upFt + downFt);
    }

    private static void requirePositive(double value, String what) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be finite and above 0, not " + value);
        }
    }
}
