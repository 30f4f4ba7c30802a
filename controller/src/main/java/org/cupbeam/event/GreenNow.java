package org.cupbeam.event;

/**
 * The green as it plays now.
 *
 * @param stimpFt       green speed as on the level, ft
 * @param stimpSdFt     standard deviation of that
 * @param uphillPercent slope along the line toward the hole, uphill positive; NaN where not said
 * @param sidePercent   slope across the line, falling to the left positive; NaN where not said
 */
public record GreenNow(double stimpFt, double stimpSdFt, double uphillPercent, double sidePercent) {
    /** Of which no slope across the line is said. */
    public GreenNow(double stimpFt, double stimpSdFt, double uphillPercent) {
        this(stimpFt, stimpSdFt, uphillPercent, Double.NaN);
    }
}
