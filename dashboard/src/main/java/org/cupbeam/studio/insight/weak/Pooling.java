package org.cupbeam.studio.insight.weak;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Tallies;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * How much each trait moves the log odds, all traits at once, with partial pooling: effects are held to be normal about
 * none, and how widely is itself told by the putts. What few putts say is drawn toward none; what many say stands.
 */
final class Pooling {
    private static final Trait[] TRAITS = Trait.values();
    /** One more for the level of all putts. */
    private static final int SIZE = TRAITS.length + 1;
    private static final double LEVEL_SD = 1;
    /** How widely effects may lie, and how likely each is beforehand: a half-normal one of 0.3. */
    private static final double[] SPREADS = {0.05, 0.1, 0.17, 0.27, 0.4, 0.6};
    private static final double SPREADS_SD = 0.3;
    private static final int STEPS_MAX = 20;
    private static final double SETTLED = 1e-8;
    private static final double BASE_STEP = 0.1;

    private final List<Row> rows;

    private Pooling(List<Row> rows) {
        this.rows = rows;
    }

    /**
     * Putts with the same traits, about as likely to drop.
     *
     * @param base    the log odds of the usual player
     * @param effects that they have: numbers of traits, and the level's
     */
    private record Row(double base, int[] effects, double tries, double made) {

        static List<Row> of(List<Tallies.Kind> kinds, MakeCurve usual) {
            Map<Long, Row> rows = new TreeMap<>();
            Map<Double, Double> bases = new HashMap<>();
            for (Tallies.Kind kind : kinds) {
                double base = bases.computeIfAbsent(kind.tries().distanceMm(), mm -> LogOdds.of(usual.at(mm)));
                int[] effects = effects(kind);
                long key = Math.round(base / BASE_STEP);
                for (int effect : effects) {
                    key = key * (SIZE + 1) + effect;
                }
                rows.merge(key, new Row(base, effects, kind.tries().tries(), kind.tries().made()), Row::plus);
            }
            return List.copyOf(rows.values());
        }

        private static int[] effects(Tallies.Kind kind) {
            int[] effects = new int[SIZE];
            int count = 0;
            for (int trait = 0; trait < TRAITS.length; trait++) {
                if (TRAITS[trait].of(kind.tries().distanceMm(), kind.breaks(), kind.lie())) {
                    effects[count++] = trait;
                }
            }
            effects[count++] = TRAITS.length;
            return Arrays.copyOf(effects, count);
        }

        private Row plus(Row other) {
            double all = tries + other.tries;
            return new Row((base * tries + other.base * other.tries) / all, effects, all, made + other.made);
        }

        private double logOdds(double[] at) {
            double sum = base;
            for (int effect : effects) {
                sum += at[effect];
            }
            return sum;
        }
    }

    /** Mean effects and their covariance; by {@link Trait}'s order, the level last. */
    record Effects(double[] mean, double[][] covariance) {
        /** One trait against the others of its family that there are putts of. */
        double difference(Trait trait, List<Trait> others) {
            return mean[trait.ordinal()] - others.stream().mapToDouble(each -> mean[each.ordinal()]).average().orElse(0);
        }

        double differenceSd(Trait trait, List<Trait> others) {
            double[] weights = new double[mean.length];
            weights[trait.ordinal()] = 1;
            others.forEach(each -> weights[each.ordinal()] -= 1.0 / others.size());
            double variance = 0;
            for (int i = 0; i < weights.length; i++) {
                for (int j = 0; j < weights.length; j++) {
                    variance += weights[i] * covariance[i][j] * weights[j];
                }
            }
            return Math.sqrt(variance);
        }
    }

    static Effects of(List<Tallies.Kind> kinds, MakeCurve usual) {
        Pooling pooling = new Pooling(Row.of(kinds, usual));
        Mode[] modes = new Mode[SPREADS.length];
        double[] weights = new double[SPREADS.length];
        for (int i = 0; i < SPREADS.length; i++) {
            modes[i] = pooling.mode(SPREADS[i]);
            weights[i] = modes[i].logEvidence - 0.5 * Math.pow(SPREADS[i] / SPREADS_SD, 2) + Math.log(SPREADS[i]);
        }
        double most = Arrays.stream(weights).max().orElseThrow();
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            weights[i] = Math.exp(weights[i] - most);
            sum += weights[i];
        }
        return mixed(modes, weights, sum);
    }

    private record Mode(double[] at, double[][] covariance, double logEvidence) {
    }

    private static Effects mixed(Mode[] modes, double[] weights, double sum) {
        double[] mean = new double[SIZE];
        for (int m = 0; m < modes.length; m++) {
            for (int i = 0; i < SIZE; i++) {
                mean[i] += weights[m] / sum * modes[m].at[i];
            }
        }
        double[][] covariance = new double[SIZE][SIZE];
        for (int m = 0; m < modes.length; m++) {
            for (int i = 0; i < SIZE; i++) {
                for (int j = 0; j < SIZE; j++) {
                    double off = (modes[m].at[i] - mean[i]) * (modes[m].at[j] - mean[j]);
                    covariance[i][j] += weights[m] / sum * (modes[m].covariance[i][j] + off);
                }
            }
        }
        return new Effects(mean, covariance);
    }

    /** Newton's steps to the most likely effects, and Laplace's estimate of the evidence there. */
    private Mode mode(double spread) {
        double[] at = new double[SIZE];
        CholeskyDecomposition curvature = null;
        for (int step = 0; step < STEPS_MAX; step++) {
            double[] slope = new double[SIZE];
            double[][] second = new double[SIZE][SIZE];
            sums(at, spread, slope, second);
            RealMatrix matrix = new Array2DRowRealMatrix(second, false);
            curvature = new CholeskyDecomposition(matrix, 1e-9, 0);
            double[] move = curvature.getSolver().solve(new ArrayRealVector(slope, false)).toArray();
            double longest = 0;
            for (int i = 0; i < SIZE; i++) {
                at[i] += move[i];
                longest = Math.max(longest, Math.abs(move[i]));
            }
            if (longest < SETTLED) {
                break;
            }
        }
        double logEvidence = logDensity(at, spread) - 0.5 * Math.log(curvature.getDeterminant())
                - TRAITS.length * Math.log(spread);
        return new Mode(at, curvature.getSolver().getInverse().getData(), logEvidence);
    }

    private void sums(double[] at, double spread, double[] slope, double[][] second) {
        for (int i = 0; i < SIZE; i++) {
            double precision = precision(i, spread);
            slope[i] = -precision * at[i];
            second[i][i] = precision;
        }
        for (Row row : rows) {
            double chance = LogOdds.chance(row.logOdds(at));
            double told = row.tries * chance * (1 - chance);
            for (int i : row.effects) {
                slope[i] += row.made - row.tries * chance;
                for (int j : row.effects) {
                    second[i][j] += told;
                }
            }
        }
    }

    private double logDensity(double[] at, double spread) {
        double sum = 0;
        for (int i = 0; i < SIZE; i++) {
            sum -= 0.5 * precision(i, spread) * at[i] * at[i];
        }
        for (Row row : rows) {
            double logOdds = row.logOdds(at);
            sum += row.made * logOdds - row.tries * Math.log1p(Math.exp(logOdds));
        }
        return sum;
    }

    private static double precision(int parameter, double spread) {
        double sd = parameter == TRAITS.length ? LEVEL_SD : spread;
        return 1 / (sd * sd);
    }
}
