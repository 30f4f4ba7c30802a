package org.cupbeam.commission;

import java.util.Arrays;
import java.util.List;
import org.cupbeam.track.RolledBall;
import org.cupbeam.track.RolledBall.Crossing;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * The same question put to Hipparchus's Levenberg–Marquardt, and put otherwise: each edge's time is worked out in closed form
 * from the unknowns and compared with the time that was seen, with derivatives by differences. Only the priors' and errors'
 * sizes are those of the estimate.
 */
final class SecondOpinion {
    private static final double TIME_SD_S = 30e-6;
    private static final double LIMB_SD_MM = 0.05;
    private static final double LAG_SD_S = 60e-6;
    private final List<RolledBall> balls;
    private final List<Place> places;
    private final List<Chord> chords;
    private final int beams;
    private final int edges;
    private final int size;
    private final double[] weights;
    private double[] at;

    SecondOpinion(List<RolledBall> balls, List<Place> places, List<Chord> chords) {
        this.balls = balls;
        this.places = places;
        this.chords = chords;
        beams = places.size();
        edges = 2 * beams * balls.size();
        size = 3 * balls.size() + 4 * beams + 2;
        weights = new double[edges];
        Arrays.fill(weights, 1);
    }

    /** The beams' places, then the deceleration of either way. */
    double[] solve() {
        at = guess();
        for (int round = 0; round < 12; round++) {
            at = new LevenbergMarquardtOptimizer().optimize(new LeastSquaresBuilder().start(at)
                    .model(point -> new Pair<>(residuals(point.toArray(), true), slopes(point.toArray())))
                    .target(new double[edges + balls.size() + 4 * beams]).maxEvaluations(500).maxIterations(500).build())
                    .getPoint().toArray();
            double[] off = residuals(at, false).toArray();
            for (int i = 0; i < edges; i++) {
                weights[i] = 5 / (4 + off[i] * off[i]);
            }
        }
        double[] told = new double[beams + 2];
        for (int b = 0; b < beams; b++) {
            told[b] = at[3 * balls.size() + 4 * b];
        }
        told[beams] = at[size - 2];
        told[beams + 1] = at[size - 1];
        return told;
    }

    /** Speeds by the first beam, places by even speed. */
    private double[] guess() {
        double[] start = new double[size];
        double[] way = new double[beams];
        RolledBall first = balls.stream().filter(RolledBall::toward).findFirst().orElseThrow();
        double placed = places.get(first.crossings().get(0).beam()).mm();
        for (int k = 1; k < beams; k++) {
            Crossing before = first.crossings().get(k - 1);
            Crossing now = first.crossings().get(k);
            way[now.beam()] = way[before.beam()] + (now.onNs() - before.onNs()) * (speed(before) + speed(now)) / 2e9;
        }
        for (int b = 0; b < beams; b++) {
            start[3 * balls.size() + 4 * b] = placed + way[b];
        }
        for (int i = 0; i < balls.size(); i++) {
            Crossing c = balls.get(i).crossings().get(0);
            start[3 * i] = (balls.get(i).toward() ? 1 : -1) * start[3 * balls.size() + 4 * c.beam()] - 21;
            start[3 * i + 1] = speed(c) * 1.02;
            start[3 * i + 2] = 500;
        }
        start[size - 2] = 500;
        start[size - 1] = 500;
        return start;
    }

    private double speed(Crossing crossing) {
        return chords.get(crossing.beam()).mm() / ((crossing.offNs() - crossing.onNs()) * 1e-9);
    }

    private RealVector residuals(double[] p, boolean weighed) {
        double[] off = new double[edges + balls.size() + 4 * beams];
        int row = 0;
        for (int i = 0; i < balls.size(); i++) {
            RolledBall ball = balls.get(i);
            for (Crossing crossing : ball.crossings()) {
                int beam = 3 * balls.size() + 4 * crossing.beam();
                double half = (chords.get(crossing.beam()).mm() + p[beam + 1]) / 2;
                for (int limb = -1; limb <= 1; limb += 2) {
                    double way = (ball.toward() ? 1 : -1) * p[beam] + limb * half - p[3 * i];
                    double left = Math.sqrt(Math.max(100, p[3 * i + 1] * p[3 * i + 1] - 2 * p[3 * i + 2] * way));
                    double expected = 2 * way / (p[3 * i + 1] + left) + (p[beam + 2] + (limb > 0 ? p[beam + 3] : 0)) * 1e-4;
                    double seen = ((limb < 0 ? crossing.onNs() : crossing.offNs()) - ball.timeNs()) * 1e-9;
                    off[row] = (expected - seen) / Math.hypot(TIME_SD_S, LIMB_SD_MM / left) * (weighed ? Math.sqrt(weights[row]) : 1);
                    row++;
                }
            }
        }
        for (int i = 0; i < balls.size(); i++) {
            double common = p[size - (balls.get(i).toward() ? 2 : 1)];
            off[row++] = (p[3 * i + 2] - common) / (0.005 * common);
        }
        for (int b = 0; b < beams; b++) {
            int beam = 3 * balls.size() + 4 * b;
            off[row++] = (p[beam] - places.get(b).mm()) / places.get(b).sdMm();
            off[row++] = p[beam + 1] / chords.get(b).sdMm();
            off[row++] = p[beam + 2] * 1e-4 / LAG_SD_S;
            off[row++] = p[beam + 3] * 1e-4 / LAG_SD_S;
        }
        return new ArrayRealVector(off, false);
    }

    private Array2DRowRealMatrix slopes(double[] p) {
        Array2DRowRealMatrix slopes = new Array2DRowRealMatrix(edges + balls.size() + 4 * beams, size);
        for (int j = 0; j < size; j++) {
            double step = 1e-5 * Math.max(1, Math.abs(p[j]));
            double[] more = p.clone();
            double[] less = p.clone();
            more[j] += step;
            less[j] -= step;
            slopes.setColumnVector(j, residuals(more, true).subtract(residuals(less, true)).mapDivide(2 * step));
        }
        return slopes;
    }
}
