package org.cupbeam.studio.insight.run;

import java.util.Arrays;

/**
 * An absorbing Markov chain, walked step by step with all its chances at once.
 *
 * <p>From each transient state some arrows lead on, each with a chance: to a transient state (0 and up) or into an
 * absorbing one, written as {@code -1 - number}.
 *
 * @param to     where a state's arrows lead
 * @param chance of each arrow; of one state they add up to 1
 * @param ends   how many absorbing states there are
 */
public record Chain(int[][] to, double[][] chance, int ends) {
    /** So little left on the way changes nothing that is shown. */
    private static final double GONE = 1e-13;

    /** A chain by matrices: from transient to transient states, and from transient to absorbing ones. */
    public static Chain of(double[][] within, double[][] out) {
        int[][] to = new int[within.length][];
        double[][] chance = new double[within.length][];
        for (int from = 0; from < within.length; from++) {
            int count = within[from].length;
            to[from] = new int[count + out[from].length];
            chance[from] = Arrays.copyOf(within[from], to[from].length);
            for (int i = 0; i < to[from].length; i++) {
                to[from][i] = i < count ? i : count - 1 - i;
            }
            System.arraycopy(out[from], 0, chance[from], count, out[from].length);
        }
        return new Chain(to, chance, out[0].length);
    }

    /**
     * What comes of starting in a state.
     *
     * @param visits expected number of times in each transient state, the start included: a row of the fundamental matrix
     * @param ended  chance to be absorbed by a number of steps, from 0, and there by end
     * @param left   chance to be still on the way after so many steps, by state
     */
    public record Walk(double[] visits, double[][] ended, double[] left) {
        public Walk {
            ended = ended.clone();
        }

        /** The chance to end in an absorbing state, in the end. */
        public double ended(int end) {
            return Arrays.stream(ended).mapToDouble(step -> step[end]).sum();
        }

        /** The expected number of steps. */
        public double steps() {
            return Arrays.stream(visits).sum();
        }
    }

    /** Walks from a state until nothing is left on the way, or so many steps at most. */
    public Walk walk(int start, int stepsMax) {
        double[] here = new double[to.length];
        here[start] = 1;
        double[] visits = new double[to.length];
        double[][] ended = new double[stepsMax + 1][];
        ended[0] = new double[ends];
        int steps = 0;
        double left = 1;
        while (left > GONE && steps < stepsMax) {
            double[] next = new double[to.length];
            ended[++steps] = new double[ends];
            left = step(here, visits, next, ended[steps]);
            here = next;
        }
        return new Walk(visits, Arrays.copyOf(ended, steps + 1), here);
    }

    private double step(double[] here, double[] visits, double[] next, double[] endedNow) {
        double left = 0;
        for (int from = 0; from < here.length; from++) {
            if (here[from] == 0) {
                continue;
            }
            visits[from] += here[from];
            for (int i = 0; i < to[from].length; i++) {
                double moved = here[from] * chance[from][i];
                if (to[from][i] >= 0) {
                    next[to[from][i]] += moved;
                    left += moved;
                } else {
                    endedNow[-1 - to[from][i]] += moved;
                }
            }
        }
        return left;
    }
}
