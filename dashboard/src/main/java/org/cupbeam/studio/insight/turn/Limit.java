package org.cupbeam.studio.insight.turn;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;

/**
 * The limit of a chart for a stated rate of false alarms: the chart's sum as a Markov chain on a grid (D. Brook and D. A.
 * Evans, Biometrika 59, 1972), whose time to absorption is the number of putts to the first false alarm.
 */
public final class Limit {
    private static final int CELLS = 80;
    private static final double LOWEST = 0.5;
    private static final double HIGHEST = 25;
    private static final double CLOSE = 0.02;
    private static final int ROUNDS_MAX = 40;

    private Limit() {
    }

    /**
     * The limit that a chart passes once in so many putts, on average, while nothing has changed.
     *
     * @param evidence values that one putt's evidence can have
     * @param chance   of each, adding up to 1
     * @param putts    to a false alarm, on average
     */
    public static double forOneFalseAlarmIn(double putts, double[] evidence, double[] chance) {
        double low = LOWEST;
        double high = HIGHEST;
        double limit = Math.log(putts);
        for (int round = 0; round < ROUNDS_MAX; round++) {
            double off = Math.log(puttsToAlarm(limit, evidence, chance) / putts);
            if (Math.abs(off) < CLOSE) {
                break;
            }
            low = off < 0 ? limit : low;
            high = off < 0 ? high : limit;
            // The logarithm of the time grows about as fast as the limit, once that is high.
            double guess = limit - off;
            limit = guess > low && guess < high ? guess : (low + high) / 2;
        }
        return limit;
    }

    /** How many putts until the sum passes the limit, on average, from none. */
    public static double puttsToAlarm(double limit, double[] evidence, double[] chance) {
        double width = limit / CELLS;
        double[][] staying = new double[CELLS + 1][CELLS + 1];
        for (int from = 0; from <= CELLS; from++) {
            for (int i = 0; i < evidence.length; i++) {
                spread(staying[from], Math.max(0, from + evidence[i] / width), chance[i]);
            }
            for (int to = 0; to <= CELLS; to++) {
                staying[from][to] = (from == to ? 1 : 0) - staying[from][to];
            }
        }
        double[] ones = new double[CELLS + 1];
        Arrays.fill(ones, 1);
        return new LUDecomposition(new Array2DRowRealMatrix(staying, false)).getSolver()
                .solve(new ArrayRealVector(ones, false)).getEntry(0);
    }

    /** Between two cells, in proportion; above the last is out. */
    private static void spread(double[] row, double place, double chance) {
        int below = (int) place;
        double part = place - below;
        if (below <= CELLS) {
            row[below] += chance * (1 - part);
        }
        if (below + 1 <= CELLS) {
            row[below + 1] += chance * part;
        }
    }
}
