package org.cupbeam.studio.insight.turn;

/**
 * The cumulative sum of evidence for a change, which begins anew whenever there is none (E. S. Page, 1954).
 *
 * <p>For putts the evidence is the logarithm of the likelihood ratio between the odds of a player who has changed and the
 * odds of before, each putt by its own chance: the risk-adjusted chart of S. H. Steiner and others (Biostatistics 1, 2000).
 */
public final class Cusum {
    private Cusum() {
    }

    /** The sum after one more piece of evidence. */
    public static double next(double sum, double evidence) {
        return Math.max(0, sum + evidence);
    }

    /** The evidence in a success. */
    public static double ofSuccess(double chance, double oddsRatio) {
        return Math.log(oddsRatio) + ofFailure(chance, oddsRatio);
    }

    /** The evidence in a failure. */
    public static double ofFailure(double chance, double oddsRatio) {
        return -Math.log1p(chance * (oddsRatio - 1));
    }
}
