package org.cupbeam.studio.insight.make;

/** How well a chance explains a row of tries. */
public enum Likelihood {
    /** Each putt for itself. What a player's putts are fitted with. */
    BINOMIAL {
        @Override
        double logOf(Tries row, double chance, double extraSd) {
            return times(row.made(), Math.log(chance)) + times(row.tries() - row.made(), Math.log1p(-chance));
        }
    },
    /**
     * The share made is normal about the chance, with an error of its own beyond that of counting. For published tables
     * with so many tries that no simple curve fits each row to within its counting error; there each putt for itself has
     * several optima, and lets the shortest putts outvote all others.
     */
    NORMAL_ERROR {
        @Override
        double logOf(Tries row, double chance, double extraSd) {
            double variance = chance * (1 - chance) / row.tries() + extraSd * extraSd;
            double off = (double) row.made() / row.tries() - chance;
            return -0.5 * (off * off / variance + Math.log(2 * Math.PI * variance));
        }
    };

    /**
     * The logarithm of the likelihood, but for what does not depend on the chance.
     *
     * @param extraSd the error beyond counting; of no matter to {@link #BINOMIAL}
     */
    abstract double logOf(Tries row, double chance, double extraSd);

    private static double times(int count, double log) {
        return count == 0 ? 0 : count * log;
    }
}
