package org.cupbeam.studio.insight.turn;

import java.util.ArrayList;
import java.util.List;

/**
 * The Bayesian view of change: sessions in stretches, each with a level of its own for every series, of any lengths (R. P.
 * Adams and D. J. C. MacKay, Bayesian online changepoint detection, 2007; looked at from both ends afterwards as by P.
 * Fearnhead, Statistics and Computing 16, 2006).
 *
 * @param turned by session, the chance that a new stretch begins with it, from all that is known now
 * @param lately by session, the chance that a new stretch began within the last few, from what was known then
 */
public record Stretches(double[] turned, double[] lately) {
    /** A level of a stretch lies about this far from the player's own average, in log odds. */
    private static final double LEVEL_SD = 0.35;
    /** One turn in so many putts, held likely beforehand. */
    private static final double PUTTS_TO_TURN = 3000;
    /** A change in direction takes about this many sessions to show. */
    private static final int LATELY = 15;
    /** Many sessions are taken together by a few, so that none of this takes long. */
    private static final int BLOCKS_MAX = 200;

    /** From all series of one player, which have the same sessions. */
    public static Stretches of(List<Series> series) {
        int sessions = series.get(0).sessions();
        int size = Math.max(1, (sessions + BLOCKS_MAX - 1) / BLOCKS_MAX);
        int blocks = (sessions + size - 1) / size;
        int putts = series.stream().mapToInt(each -> each.putts(0, sessions)).max().orElse(0);
        double hazard = blocks == 0 ? 0.5 : Math.min(0.5, (double) putts / blocks / PUTTS_TO_TURN);
        List<double[][]> sums = new ArrayList<>();
        series.forEach(each -> sums.add(sums(each, size, blocks)));
        double[][] byBlock = Blocks.of(sums, hazard, LATELY);
        double[] turned = new double[sessions];
        double[] lately = new double[sessions];
        for (int session = 0; session < sessions; session++) {
            turned[session] = session % size == 0 ? byBlock[0][session / size] : 0;
            lately[session] = byBlock[1][session / size];
        }
        return new Stretches(turned, lately);
    }

    /** The chance of a turn at a session or a few to either side. */
    public double near(int session, int either) {
        double sum = 0;
        for (int i = Math.max(0, session - either); i <= Math.min(turned.length - 1, session + either); i++) {
            sum += turned[i];
        }
        return Math.min(1, sum);
    }

    private static double[][] sums(Series series, int size, int blocks) {
        double spread = series.spread();
        double[][] sums = new double[2][blocks + 1];
        for (int block = 0; block < blocks; block++) {
            Series.Evidence here = series.evidence(block * size, Math.min(series.sessions(), (block + 1) * size));
            sums[0][block + 1] = sums[0][block] + here.score() / spread;
            sums[1][block + 1] = sums[1][block] + here.told() / spread;
        }
        return sums;
    }

    /** The sums over all ways to cut blocks into stretches. */
    static final class Blocks {
        private final List<double[][]> sums;
        private final int count;
        private final int few;
        private final double logTurn;
        private final double logStay;

        private Blocks(List<double[][]> sums, double hazard, int few) {
            this.sums = sums;
            this.few = few;
            count = sums.get(0)[0].length - 1;
            logTurn = Math.log(hazard);
            logStay = Math.log1p(-hazard);
        }

        /**
         * By block: the chance that a stretch begins with it, and that one began lately.
         *
         * @param sums   of each series, cumulated over the blocks: scores, then what they tell
         * @param hazard the chance of a turn from one block to the next
         * @param few    blocks that count as lately
         */
        static double[][] of(List<double[][]> sums, double hazard, int few) {
            return new Blocks(sums, hazard, few).chances();
        }

        private double[][] chances() {
            double[] before = new double[count + 1];
            double[] lately = new double[count];
            for (int to = 1; to <= count; to++) {
                double[] runs = new double[to];
                for (int from = 0; from < to; from++) {
                    runs[from] = before[from] + stretch(from, to);
                }
                double all = logSum(runs, 0, to);
                before[to] = all + logTurn;
                lately[to - 1] = Math.exp(logSum(runs, Math.max(1, to - few), to) - all);
            }
            double[] after = new double[count + 1];
            for (int from = count - 1; from >= 0; from--) {
                double[] runs = new double[count - from];
                for (int to = from + 1; to <= count; to++) {
                    runs[to - from - 1] = stretch(from, to) + (to < count ? logTurn + after[to] : 0);
                }
                after[from] = logSum(runs, 0, runs.length);
            }
            double[] turned = new double[count];
            for (int block = 1; block < count; block++) {
                turned[block] = Math.exp(before[block] + after[block] - after[0]);
            }
            return new double[][] {turned, lately};
        }

        /** The log of a stretch's evidence, and of its lasting so long. */
        private double stretch(int from, int to) {
            double log = (to - from - 1) * logStay;
            for (double[][] each : sums) {
                double score = each[0][to] - each[0][from];
                double told = each[1][to] - each[1][from];
                log += 0.5 * (score * score / (told + 1 / (LEVEL_SD * LEVEL_SD))
                        - Math.log1p(LEVEL_SD * LEVEL_SD * told));
            }
            return log;
        }

        private static double logSum(double[] logs, int from, int to) {
            double most = Double.NEGATIVE_INFINITY;
            for (int i = from; i < to; i++) {
                most = Math.max(most, logs[i]);
            }
            double sum = 0;
            for (int i = from; i < to; i++) {
                sum += Math.exp(logs[i] - most);
            }
            return sum == 0 ? Double.NEGATIVE_INFINITY : most + Math.log(sum);
        }
    }
}
