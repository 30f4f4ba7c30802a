package org.cupbeam.commission;

/** How far off a value may be, as people say and read it: the interval that holds the truth 95 times in 100. */
final class Within {
    /** The normal distribution's 97.5 % quantile, to two decimals (any table of it). */
    private static final double SDS = 1.96;

    private Within() {
    }

    /** Half the interval's width. @param sd standard deviation, in any unit */
    static double of(double sd) {
        return SDS * sd;
    }

    /** The standard deviation of what somebody knows within so much. */
    static double sd(double within) {
        return within / SDS;
    }
}
