package org.cupbeam.studio.insight.chance;

import org.apache.commons.statistics.interval.BinomialConfidenceInterval;
import org.apache.commons.statistics.interval.Interval;

/**
 * So many of so many.
 *
 * @param made  0 to {@code tries}
 * @param tries 0 or more
 */
public record Proportion(int made, int tries) {

    public Proportion {
        if (made < 0 || made > tries) {
            throw new IllegalArgumentException(made + " of " + tries + " cannot be");
        }
    }

    /** The share made; NaN without a try. */
    public double share() {
        return (double) made / tries;
    }

    /**
     * With the score interval of E. B. Wilson (1927): it behaves well for few tries, and near none and all. Without a
     * try, anything.
     */
    public Estimate wilson() {
        return with(BinomialConfidenceInterval.WILSON_SCORE);
    }

    /**
     * With the interval of H. Jeffreys, from 0 where none was made and to 1 where all were (L. D. Brown, T. T. Cai and
     * A. DasGupta, Statistical Science 16, 101, 2001): a little narrower than {@link #wilson}.
     */
    public Estimate jeffreys() {
        return with(BinomialConfidenceInterval.JEFFREYS);
    }

    /** As {@code 23 of 60, 38 in 100 (27 to 51)}. */
    public String inWords() {
        return tries == 0 ? "no putts yet" : made + " of " + tries + ", " + wilson().inHundred();
    }

    private Estimate with(BinomialConfidenceInterval method) {
        if (tries == 0) {
            return new Estimate(0.5, 0, 1);
        }
        Interval interval = method.fromErrorRate(tries, made, 1 - Estimate.LEVEL);
        return new Estimate(share(), Math.max(0, interval.getLowerBound()), Math.min(1, interval.getUpperBound()));
    }
}
