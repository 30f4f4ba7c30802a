package org.cupbeam.studio.insight.make;

import org.cupbeam.studio.insight.chance.Bell;
import org.cupbeam.studio.insight.chance.Estimate;

/**
 * A player's direction: the standard deviation of where putts start, from which of them dropped given how wide the hole
 * was to each. What length each rolled is known and no longer blurs it.
 *
 * @param logRad of the standard deviation, its logarithm
 * @param logSd  how well that is known
 * @param putts  that it rests on
 */
public record DirectionFit(double logRad, double logSd, int putts) {
    /**
     * Players of a studio: 1.0 degree for the tour and 1.5 for amateurs are published (M. Bansal and M. Broadie, Winter
     * Simulation Conference 2008, quoted second-hand), with reading the green on top.
     */
    private static final double USUAL_RAD = Math.toRadians(1.4);
    private static final double USUAL_LOG_SD = 0.35;
    private static final double VARIANCE_MIN = 1;

    private static final int STEPS = 8;
    private static final double LONGEST_STEP = 0.5;

    /** With what is held likely beforehand. */
    public static DirectionFit of(DirectionTally tally) {
        return of(tally, Math.log(USUAL_RAD), USUAL_LOG_SD);
    }

    /**
     * With something else held likely beforehand.
     *
     * @param usualLog   the logarithm of the standard deviation in radians
     * @param usualLogSd how likely that is: a standard deviation of it
     */
    public static DirectionFit of(DirectionTally tally, double usualLog, double usualLogSd) {
        double log = usualLog;
        double told = 0;
        for (int step = 0; step < STEPS; step++) {
            double slope = (usualLog - log) / (usualLogSd * usualLogSd);
            told = 1 / (usualLogSd * usualLogSd);
            for (int cell = 0; cell < DirectionTally.cells(); cell++) {
                if (tally.tries(cell) > 0) {
                    double chance = chance(cell, Math.exp(log));
                    double z = DirectionTally.halfAngleRad(cell) / Math.exp(log);
                    double falls = -2 * z * Bell.density(z) / (chance * (1 - chance));
                    slope += falls * (tally.made(cell) - tally.tries(cell) * chance);
                    told += falls * falls * tally.tries(cell) * chance * (1 - chance);
                }
            }
            // Fisher's scoring, with steps no longer than the curve bends.
            log += Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, slope / told));
        }
        double misfit = misfit(tally, Math.exp(log));
        return new DirectionFit(log, Math.sqrt(misfit / told), tally.putts());
    }

    /** In degrees. */
    public Estimate degrees() {
        return Estimate.ofLog(logRad, logSd).times(180 / Math.PI);
    }

    /** By what factor the cells scatter more than counting explains; 1 or more. */
    private static double misfit(DirectionTally tally, double rad) {
        double chiSquare = 0;
        int freedom = -1;
        for (int cell = 0; cell < DirectionTally.cells(); cell++) {
            double chance = chance(cell, rad);
            double variance = tally.tries(cell) * chance * (1 - chance);
            if (variance >= VARIANCE_MIN) {
                double off = tally.made(cell) - tally.tries(cell) * chance;
                chiSquare += off * off / variance;
                freedom++;
            }
        }
        return freedom > 0 ? Math.max(1, chiSquare / freedom) : 1;
    }

    private static double chance(int cell, double rad) {
        double chance = Opening.chance(DirectionTally.halfAngleRad(cell), rad);
        return Math.min(1 - 1e-12, Math.max(1e-12, chance));
    }
}
