package org.cupbeam.commission;

/** The normal equations of a least-squares problem, gathered row by row, and solved by Cholesky's factors. */
final class Normal {
    private final int size;
    private final double[][] matrix;
    private final double[] right;
    private double[][] lower;

    Normal(int size) {
        this.size = size;
        matrix = new double[size][size];
        right = new double[size];
    }

    /** A row with few terms: the sum of weight[k] · unknown[index[k]] was observed. */
    void add(int[] index, double[] weight, double observed, double sd) {
        double scale = 1 / (sd * sd);
        for (int i = 0; i < index.length; i++) {
            right[index[i]] += scale * weight[i] * observed;
            for (int j = 0; j < index.length; j++) {
                matrix[index[i]][index[j]] += scale * weight[i] * weight[j];
            }
        }
    }

    /** @throws ArithmeticException where the rows do not determine the unknowns */
    double[] solve() {
        factor();
        return solve(right);
    }

    private void factor() {
        lower = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i == j && !(sum > 0)) {
                    throw new ArithmeticException("unknown " + i + " is not determined");
                }
                lower[i][j] = i == j ? Math.sqrt(sum) : sum / lower[j][j];
            }
        }
    }

    /** The covariance of a weighted sum with all unknowns, once solved: the inverse, times the weights. */
    double[] covariance(int[] index, double[] weight) {
        double[] sum = new double[size];
        for (int i = 0; i < index.length; i++) {
            sum[index[i]] += weight[i];
        }
        return solve(sum);
    }

    private double[] solve(double[] of) {
        double[] x = of.clone();
        for (int i = 0; i < size; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= lower[i][k] * x[k];
            }
            x[i] /= lower[i][i];
        }
        for (int i = size - 1; i >= 0; i--) {
            for (int k = i + 1; k < size; k++) {
                x[i] -= lower[k][i] * x[k];
            }
            x[i] /= lower[i][i];
        }
        return x;
    }
}
