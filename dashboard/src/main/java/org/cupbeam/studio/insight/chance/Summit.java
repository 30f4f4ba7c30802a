package org.cupbeam.studio.insight.chance;

import org.hipparchus.analysis.MultivariateFunction;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * The highest point of a log density of a few parameters, and the normal distribution that fits it there (Laplace's
 * approximation).
 *
 * @param at         the most likely parameters
 * @param covariance of them
 * @param logDensity there
 */
public record Summit(double[] at, double[][] covariance, double logDensity) {
    private static final int EVALUATIONS_MAX = 4000;
    private static final double FIRST_STEP = 0.1;
    private static final double RELATIVE = 1e-12;
    private static final double CURVATURE_STEP = 1e-3;
    /** A curvature below this tells nothing: that parameter's standard deviation is given as 1000. */
    private static final double FLAT = 1e-6;

    /**
     * Climbs from a place to the summit above it; where there are several, the start decides. Meant for parameters whose
     * natural steps are of the order of a tenth, as logarithms are.
     */
    public static Summit of(MultivariateFunction logDensity, double... start) {
        double[] at = climb(logDensity, start, FIRST_STEP);
        // A simplex that has shrunk on a ridge climbs on when spread again.
        at = climb(logDensity, at, FIRST_STEP / 5);
        return new Summit(at, covariance(logDensity, at), logDensity.value(at));
    }

    /** The standard deviation of one parameter. */
    public double sd(int parameter) {
        return Math.sqrt(covariance[parameter][parameter]);
    }

    /** The standard deviation of something that grows by so much with each parameter. */
    public double sd(double[] gradient) {
        double variance = 0;
        for (int i = 0; i < gradient.length; i++) {
            for (int j = 0; j < gradient.length; j++) {
                variance += gradient[i] * covariance[i][j] * gradient[j];
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    private static double[] climb(MultivariateFunction logDensity, double[] start, double step) {
        return new SimplexOptimizer(new SimpleValueChecker(RELATIVE, RELATIVE)).optimize(
                new MaxEval(EVALUATIONS_MAX), GoalType.MAXIMIZE, new ObjectiveFunction(logDensity),
                new InitialGuess(start), new NelderMeadSimplex(start.length, step)).getPoint();
    }

    private static double[][] covariance(MultivariateFunction logDensity, double[] at) {
        int size = at.length;
        RealMatrix curvature = new Array2DRowRealMatrix(size, size);
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                double second = -(shifted(logDensity, at, i, 1, j, 1) - shifted(logDensity, at, i, 1, j, -1)
                        - shifted(logDensity, at, i, -1, j, 1) + shifted(logDensity, at, i, -1, j, -1))
                        / (4 * CURVATURE_STEP * CURVATURE_STEP);
                curvature.setEntry(i, j, second);
                curvature.setEntry(j, i, second);
            }
        }
        for (int i = 0; i < size; i++) {
            curvature.setEntry(i, i, Math.max(FLAT, curvature.getEntry(i, i)));
        }
        return new CholeskyDecomposition(curvature, 1e-9, 0).getSolver().getInverse().getData();
    }

    private static double shifted(MultivariateFunction logDensity, double[] at, int i, int up, int j, int right) {
        double[] there = at.clone();
        there[i] += up * CURVATURE_STEP;
        there[j] += right * CURVATURE_STEP;
        return logDensity.value(there);
    }
}
