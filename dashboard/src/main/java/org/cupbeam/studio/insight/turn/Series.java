package org.cupbeam.studio.insight.turn;

import java.util.Arrays;
import org.cupbeam.studio.insight.chance.LogOdds;

/**
 * A player's putts as successes and failures, each with its own chance, session by session: what a chart reads.
 *
 * <p>Putts with the same chance share a cell.
 */
public final class Series {
    private static final int BINS = 20;

    private final Part part;
    private final int[] starts;
    private final int[] cell;
    private final float[] success;
    private final double[] chance;
    /** Summed up over the sessions before each. */
    private final double[] scores;
    private final double[] told;
    private final double spread;

    /**
     * A series.
     *
     * @param starts  where each session's first putt stands, and after the last the number of putts
     * @param cell    of each putt
     * @param success of each putt, 0 or 1; in between where only so much is known
     * @param chance  by cell, above 0 and below 1
     */
    Series(Part part, int[] starts, int[] cell, float[] success, double[] chance) {
        this.part = part;
        this.starts = starts;
        this.cell = cell;
        this.success = success;
        this.chance = chance;
        scores = new double[starts.length];
        told = new double[starts.length];
        for (int session = 0; session < sessions(); session++) {
            double score = 0;
            double tells = 0;
            for (int putt = starts[session]; putt < starts[session + 1]; putt++) {
                double p = chance[cell[putt]];
                score += success[putt] - p;
                tells += p * (1 - p);
            }
            scores[session + 1] = scores[session] + score;
            told[session + 1] = told[session] + tells;
        }
        spread = fromOneToTheNext();
    }

    public Part part() {
        return part;
    }

    /** How many sessions, those without a putt in the series included. */
    public int sessions() {
        return starts.length - 1;
    }

    /** How many putts there are from one session to before another. */
    public int putts(int from, int to) {
        return starts[to] - starts[from];
    }

    int cells() {
        return chance.length;
    }

    double chance(int ofCell) {
        return chance[ofCell];
    }

    int start(int session) {
        return starts[session];
    }

    int cellOf(int putt) {
        return cell[putt];
    }

    float success(int putt) {
        return success[putt];
    }

    /** Counts from one session to before another, by cell: tries into one, successes into the other. */
    void count(int from, int to, double[] tries, double[] successes) {
        for (int putt = starts[from]; putt < starts[to]; putt++) {
            tries[cell[putt]]++;
            successes[cell[putt]] += success[putt];
        }
    }

    /** What the putts from one session to before another say of how far the log odds are moved. */
    Evidence evidence(int from, int to) {
        return new Evidence(scores[to] - scores[from], told[to] - told[from]);
    }

    /**
     * Successes beyond what was to be expected, and how much the putts can tell.
     *
     * @param told one over the variance of the log odds
     */
    record Evidence(double score, double told) {
        /** Twice the log of how much better some level explains the putts than none. */
        double square() {
            return told > 0 ? score * score / told : 0;
        }
    }

    /** How much better two levels explain the sessions from one to before another, cut at a third, than one level does. */
    double gain(int from, int cut, int to) {
        return (evidence(from, cut).square() + evidence(cut, to).square() - evidence(from, to).square()) / (2 * spread);
    }

    /**
     * By what factor sessions differ more than their putts' chance would have it, 1 or more: good days and bad. Taken from
     * one session to the next, so that a turn does not count as such.
     */
    double spread() {
        return spread;
    }

    private double fromOneToTheNext() {
        double squares = 0;
        int pairs = 0;
        double last = Double.NaN;
        for (int session = 0; session < sessions(); session++) {
            Evidence here = evidence(session, session + 1);
            if (here.told >= 1) {
                double off = here.score / Math.sqrt(here.told);
                if (!Double.isNaN(last)) {
                    squares += (off - last) * (off - last) / 2;
                    pairs++;
                }
                last = off;
            }
        }
        // Drawn toward none where there are few sessions.
        return Math.max(1, (squares + 10) / (pairs + 10));
    }

    /**
     * The mean chance of all the putts, their log odds moved by so much.
     */
    double meanChance(double moved) {
        int[] counts = new int[chance.length];
        for (int each : cell) {
            counts[each]++;
        }
        double sum = 0;
        for (int i = 0; i < chance.length; i++) {
            sum += counts[i] * LogOdds.moved(chance[i], moved);
        }
        return sum / cell.length;
    }

    /** The chances of all putts in a few steps: chances, then how often each occurs. */
    double[][] mix() {
        double[] sums = new double[BINS];
        double[] counts = new double[BINS];
        for (int each : cell) {
            int bin = Math.min(BINS - 1, (int) (BINS * chance[each]));
            sums[bin] += chance[each];
            counts[bin]++;
        }
        int used = 0;
        for (int bin = 0; bin < BINS; bin++) {
            if (counts[bin] > 0) {
                sums[used] = sums[bin] / counts[bin];
                counts[used++] = counts[bin] / cell.length;
            }
        }
        return new double[][] {Arrays.copyOf(sums, used), Arrays.copyOf(counts, used)};
    }
}
