package org.cupbeam.studio.insight.make;

import java.util.Arrays;
import java.util.List;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.chance.Summit;

/**
 * A shape fitted to tries, with how well that is known.
 *
 * @param shape  whose curve it is
 * @param summit the parameters' logarithms; under {@link Likelihood#NORMAL_ERROR} the error's beyond counting is the last
 * @param misfit by what factor the rows scatter more about the curve than counting explains, 1 or more; all intervals
 *               are widened by its root
 * @param putts  that it rests on
 */
public record CurveFit(Shape shape, Summit summit, double misfit, int putts) implements Skill {
    private static final double FIRST_EXTRA_SD = 0.01;
    /** A row tells of misfit only if its count could well be one more or less. */
    private static final double VARIANCE_MIN = 1;
    private static final double STEP = 1e-4;

    /** A player's putts, each for itself, with what is held likely beforehand. */
    public static CurveFit of(Shape shape, Prior prior, List<Tries> rows) {
        Summit summit = Summit.of(logs -> prior.logDensity(logs)
                + logLikelihood(Likelihood.BINOMIAL, rows, shape.curve(values(logs)), 0), prior.start());
        MakeCurve curve = shape.curve(values(summit.at()));
        return new CurveFit(shape, summit, misfit(rows, curve, summit.at().length), putts(rows));
    }

    /** A published table, fitted with an error beyond counting and no prior. */
    public static CurveFit ofTable(Shape shape, List<Tries> rows, double... start) {
        double[] first = Arrays.copyOf(Prior.none(start).start(), start.length + 1);
        first[start.length] = Math.log(FIRST_EXTRA_SD);
        Summit summit = Summit.of(logs -> logLikelihood(Likelihood.NORMAL_ERROR, rows, shape.curve(values(logs)),
                Math.exp(logs[start.length])), first);
        return new CurveFit(shape, summit, 1, putts(rows));
    }

    @Override
    public MakeCurve curve() {
        return shape.curve(values(summit.at()));
    }

    /** One parameter, in its own unit. */
    public Estimate parameter(int number) {
        return Estimate.ofLog(summit.at()[number], summit.sd(number) * Math.sqrt(misfit));
    }

    @Override
    public double logOddsSd(double distanceMm) {
        double[] gradient = new double[summit.at().length];
        for (int i = 0; i < gradient.length; i++) {
            gradient[i] = (logOdds(i, STEP, distanceMm) - logOdds(i, -STEP, distanceMm)) / (2 * STEP);
        }
        return summit.sd(gradient) * Math.sqrt(misfit);
    }

    private double logOdds(int parameter, double step, double distanceMm) {
        double[] logs = summit.at().clone();
        logs[parameter] += step;
        return LogOdds.of(shape.curve(values(logs)).at(distanceMm));
    }

    static double logLikelihood(Likelihood likelihood, List<Tries> rows, MakeCurve curve, double extraSd) {
        double sum = 0;
        for (Tries row : rows) {
            double chance = Math.min(1 - 1e-12, Math.max(1e-12, curve.at(row.distanceMm())));
            sum += likelihood.logOf(row, chance, extraSd);
        }
        return sum;
    }

    private static double misfit(List<Tries> rows, MakeCurve curve, int parameters) {
        double chiSquare = 0;
        int freedom = -parameters;
        for (Tries row : rows) {
            double chance = curve.at(row.distanceMm());
            double variance = row.tries() * chance * (1 - chance);
            if (variance >= VARIANCE_MIN) {
                double off = row.made() - row.tries() * chance;
                chiSquare += off * off / variance;
                freedom++;
            }
        }
        return freedom > 0 ? Math.max(1, chiSquare / freedom) : 1;
    }

    private static int putts(List<Tries> rows) {
        return rows.stream().mapToInt(Tries::tries).sum();
    }

    private static double[] values(double[] logs) {
        double[] values = new double[logs.length];
        for (int i = 0; i < logs.length; i++) {
            values[i] = Math.exp(logs[i]);
        }
        return values;
    }
}
