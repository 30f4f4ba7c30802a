package org.cupbeam.studio.insight.make;

import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.chance.Summit;

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

    /** With what is held likely beforehand. */
    public static DirectionFit of(DirectionTally tally) {
        Summit summit = Summit.of(log -> logDensity(tally, log[0]), Math.log(USUAL_RAD));
        double misfit = misfit(tally, Math.exp(summit.at()[0]));
        return new DirectionFit(summit.at()[0], summit.sd(0) * Math.sqrt(misfit), tally.putts());
    }

    /** In degrees. */
    public Estimate degrees() {
        return Estimate.ofLog(logRad, logSd).times(180 / Math.PI);
    }

    private static double logDensity(DirectionTally tally, double log) {
        double off = (log - Math.log(USUAL_RAD)) / USUAL_LOG_SD;
        double sum = -0.5 * off * off;
        for (int cell = 0; cell < DirectionTally.cells(); cell++) {
            if (tally.tries(cell) > 0) {
                double chance = chance(cell, Math.exp(log));
                sum += tally.made(cell) * Math.log(chance)
                        + (tally.tries(cell) - tally.made(cell)) * Math.log1p(-chance);
            }
        }
        return sum;
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
