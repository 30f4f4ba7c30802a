package org.cupbeam.studio.insight.chance;

/** Chances by the logarithm of their odds, on which differences mean the same for likely and unlikely things. */
public final class LogOdds {
    /** So near to certain that no count of putts could tell the difference. */
    private static final double SURE = 1e-9;

    private LogOdds() {
    }

    /** ln(p/(1−p)), with chances kept a hair away from 0 and 1. */
    public static double of(double chance) {
        double kept = Math.min(1 - SURE, Math.max(SURE, chance));
        return Math.log(kept / (1 - kept));
    }

    /** The chance of these log odds. */
    public static double chance(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }

    /** The chance, its log odds moved by so much; 0 and 1 stay. */
    public static double moved(double chance, double by) {
        double odds = chance * Math.exp(by);
        return odds / (1 - chance + odds);
    }
}
