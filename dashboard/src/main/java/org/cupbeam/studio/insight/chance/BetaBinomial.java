package org.cupbeam.studio.insight.chance;

import org.apache.commons.numbers.gamma.LogBeta;

/**
 * How many of the next {@code tries} will be made, where the chance itself is known only as well as {@code a} made and
 * {@code b} missed would tell it.
 *
 * @param tries 0 or more
 * @param a     above 0
 * @param b     above 0
 */
public record BetaBinomial(int tries, double a, double b) {

    /** The distribution of the next tries, whose chance has this mean and, in its log odds, this standard deviation. */
    public static BetaBinomial next(int tries, double chance, double logOddsSd) {
        // Moments matched: the chance's variance is sd² p² q², a beta's p q / (a + b + 1).
        double worth = Math.max(1, 1 / (logOddsSd * logOddsSd * chance * (1 - chance)) - 1);
        return new BetaBinomial(tries, worth * chance, worth * (1 - chance));
    }

    /** The chance of exactly so many. */
    public double of(int made) {
        double ways = -Math.log(tries + 1.0) - LogBeta.value(tries - made + 1.0, made + 1.0);
        return Math.exp(ways + LogBeta.value(made + a, tries - made + b) - LogBeta.value(a, b));
    }

    public double mean() {
        return tries * a / (a + b);
    }

    public double variance() {
        return mean() * b / (a + b) * (a + b + tries) / (a + b + 1);
    }

    /** The fewest so that fewer has no more than this chance. */
    public int quantile(double chance) {
        double sum = 0;
        for (int made = 0; made < tries; made++) {
            sum += of(made);
            if (sum > chance) {
                return made;
            }
        }
        return tries;
    }
}
