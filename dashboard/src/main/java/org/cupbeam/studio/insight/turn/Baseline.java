package org.cupbeam.studio.insight.turn;

import org.cupbeam.studio.insight.chance.LogOdds;

/** How far a stretch of a series lies above (positive) or below its chances, in log odds, as its putts come in. */
final class Baseline {
    private static final double PRIOR_SD = 1;
    private static final int STEPS = 4;

    private final Series series;
    private final double[] tries;
    private final double[] successes;
    private double moved;
    private double told;

    Baseline(Series series) {
        this.series = series;
        tries = new double[series.cells()];
        successes = new double[series.cells()];
    }

    void add(int fromSession, int toSession) {
        series.count(fromSession, toSession, tries, successes);
        solve();
    }

    /** Best guess, drawn a little toward none. */
    double moved() {
        return moved;
    }

    /** Standard deviation of that. */
    double sd() {
        return Math.sqrt(series.spread() / (told + 1 / (PRIOR_SD * PRIOR_SD)));
    }

    private void solve() {
        for (int step = 0; step < STEPS; step++) {
            double score = -moved / (PRIOR_SD * PRIOR_SD);
            told = 0;
            for (int cell = 0; cell < tries.length; cell++) {
                if (tries[cell] > 0) {
                    double p = LogOdds.moved(series.chance(cell), moved);
                    score += successes[cell] - tries[cell] * p;
                    told += tries[cell] * p * (1 - p);
                }
            }
            moved += score / (told + 1 / (PRIOR_SD * PRIOR_SD));
        }
    }
}
