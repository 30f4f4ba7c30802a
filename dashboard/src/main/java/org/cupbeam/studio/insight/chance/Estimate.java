package org.cupbeam.studio.insight.chance;

import org.cupbeam.studio.insight.words.Words;

/**
 * A value, and the interval that holds the true one 95 times in 100.
 *
 * @param value the best guess; within the interval
 * @param low   the interval's lower end
 * @param high  its upper end
 */
public record Estimate(double value, double low, double high) {
    /** How often an interval is to hold the true value. */
    public static final double LEVEL = 0.95;
    /** Standard deviations to each side that hold a normal value so often. */
    public static final double SDS = 1.959963984540054;

    /** Of a value whose error is normal. */
    public static Estimate normal(double mean, double sd) {
        return new Estimate(mean, mean - SDS * sd, mean + SDS * sd);
    }

    /** Of a chance whose log odds have a normal error. */
    public static Estimate ofLogOdds(double mean, double sd) {
        return new Estimate(LogOdds.chance(mean), LogOdds.chance(mean - SDS * sd), LogOdds.chance(mean + SDS * sd));
    }

    /** Of a positive value whose logarithm has a normal error. */
    public static Estimate ofLog(double mean, double sd) {
        return new Estimate(Math.exp(mean), Math.exp(mean - SDS * sd), Math.exp(mean + SDS * sd));
    }

    /** From the lower to the upper end. */
    public double width() {
        return high - low;
    }

    public boolean holds(double truth) {
        return truth >= low && truth <= high;
    }

    /** A chance, as {@code 42 in 100 (35 to 49)}. */
    public String inHundred() {
        return Words.inHundred(value, low, high);
    }

    /** In other units. */
    public Estimate times(double factor) {
        return factor >= 0 ? new Estimate(factor * value, factor * low, factor * high)
                : new Estimate(factor * value, factor * high, factor * low);
    }
}
