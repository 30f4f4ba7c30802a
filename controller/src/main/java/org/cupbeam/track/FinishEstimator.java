package org.cupbeam.track;

import java.util.Arrays;
import org.cupbeam.green.Rolling;

/**
 * Where a ball stopped, from the edges of its crossings: the maximum a posteriori of place, speed and deceleration
 * together with what the lane's day has taught ({@link LaneBelief}).
 *
 * <p>At a given time the model is linear in all of these, x(τ) = x + v·τ − a·τ²/2, so an edge at time τ says
 * x(τ − lag) = position + offset ∓ half the chord; only the weight of a time error needs the speed, which the
 * tracker's {@link Roll} has. One pass of exact updates is therefore the Gauss–Newton solution, with its covariance.
 */
final class FinishEstimator {
    /** Noise of one edge until the lane has shown its own: of its time, s, and of where the beam is cut, mm. */
    static final double EDGE_SD_S = 30e-6;
    static final double EDGE_SD_MM = 0.05;
    /** Chi-square of one degree of freedom beyond which a putt's word on the green's speed is not believed. */
    private static final double SURPRISE = 12;
    private static final int X = 0;
    private static final int V = 1;
    private static final int A = 2;
    private static final int LANE = 3;

    private final Lay lay;
    private final int size;
    private final double[] mean;
    private final double[] cov;
    private final double[] ph;
    private final int[] index = new int[5];
    private final double[] weight = new double[5];
    private double chiSquare;
    private int edges;

    FinishEstimator(Lay lay) {
        this.lay = lay;
        size = LANE + 1 + 2 * lay.beams;
        mean = new double[size];
        cov = new double[size * size];
        ph = new double[size];
    }

    /**
     * Estimates one stretch of free rolling.
     *
     * @param from first crossing to use
     * @param to   one past the last
     * @param roll the stretch as roughly known, for its speeds
     */
    void estimate(Crossings crossings, int from, int to, Roll roll, LaneBelief lane) {
        estimate(crossings, from, to, roll, lane, lane.decelerationSd());
    }

    /** The same for a stretch that the rim began, whose deceleration along the line is less well known. */
    void estimateDeflected(Crossings crossings, int from, int to, Roll roll, LaneBelief lane) {
        estimate(crossings, from, to, roll, lane, lane.deflectedSd());
    }

    private void estimate(Crossings crossings, int from, int to, Roll roll, LaneBelief lane, double decelerationSd) {
        begin(lane, decelerationSd);
        chiSquare = 0;
        edges = 0;
        for (int i = from; i < to; i++) {
            int beam = crossings.beam(i);
            edge(beam, crossings.onS(i), roll, -lay.halfChordMm[beam], 0, lane);
            if (!Double.isNaN(crossings.offS(i))) {
                edge(beam, crossings.offS(i), roll, lay.halfChordMm[beam], 1, lane);
            }
        }
    }

    private void begin(LaneBelief lane, double decelerationSd) {
        Arrays.fill(cov, 0);
        mean[X] = 0;
        mean[V] = 1000;
        mean[A] = lane.decelerationMmPerS2();
        cov[X * size + X] = 1e7;
        cov[V * size + V] = 4e6;
        cov[A * size + A] = decelerationSd * decelerationSd;
        for (int i = 0; i < lane.size; i++) {
            mean[LANE + i] = lane.mean[i];
            double shared = lane.levelMmPerS2() * lane.covariance[lane.at(0, i)];
            cov[A * size + LANE + i] = shared;
            cov[(LANE + i) * size + A] = shared;
            System.arraycopy(lane.covariance, lane.at(i, 0), cov, (LANE + i) * size + LANE, lane.size);
        }
    }

    private void edge(int beam, double timeS, Roll roll, double limbMm, int lags, LaneBelief lane) {
        double speed = Math.max(0, roll.speedMmPerS(timeS));
        index[0] = X;
        weight[0] = 1;
        index[1] = V;
        weight[1] = timeS;
        index[2] = A;
        weight[2] = -timeS * timeS / 2;
        index[3] = LANE + LaneBelief.offset(beam);
        weight[3] = -1;
        index[4] = LANE + lane.lag(beam);
        weight[4] = -speed * lags;
        double time = speed * EDGE_SD_S;
        update(lay.positionMm[beam] + limbMm, (time * time + EDGE_SD_MM * EDGE_SD_MM) * lane.noise());
    }

    private void update(double observed, double variance) {
        double s = variance;
        double expected = 0;
        for (int i = 0; i < size; i++) {
            double sum = 0;
            for (int k = 0; k < index.length; k++) {
                sum += cov[i * size + index[k]] * weight[k];
            }
            ph[i] = sum;
        }
        for (int k = 0; k < index.length; k++) {
            s += weight[k] * ph[index[k]];
            expected += weight[k] * mean[index[k]];
        }
        double gain = (observed - expected) / s;
        chiSquare += (observed - expected) * gain;
        edges++;
        for (int i = 0; i < size; i++) {
            mean[i] += ph[i] * gain;
            double scaled = ph[i] / s;
            int row = i * size;
            for (int j = 0; j < size; j++) {
                cov[row + j] -= scaled * ph[j];
            }
        }
    }

    /** Whether the edges fit one free roll: their chi-square, two being spent on place and speed, is no rarity. */
    boolean fits() {
        int free = freedom();
        return chiSquare < free + 4 * Math.sqrt(2.0 * free) + 6;
    }

    private int freedom() {
        return Math.max(1, edges - 2);
    }

    double finishMm() {
        return mean[X] + Rolling.stopDistanceMm(mean[V], mean[A]);
    }

    double finishSdMm() {
        double gv = mean[V] / mean[A];
        double ga = -gv * gv / 2;
        double variance = cov[X] + gv * gv * cov[V * size + V] + ga * ga * cov[A * size + A]
                + 2 * (gv * cov[V] + ga * cov[A] + gv * ga * cov[V * size + A]);
        return Math.sqrt(Math.max(0, variance));
    }

    /** The speed at a place, mm/s; NaN if it stops short of it. */
    double speedAtMmPerS(double positionMm) {
        return Rolling.speedAfterMmPerS(mean[V], mean[A], positionMm - mean[X]);
    }

    /** Lets the lane learn from what was estimated last, unless that would surprise it too much to be true. */
    void teach(LaneBelief lane) {
        if (fits() && isBelievable(lane)) {
            double level = lane.levelMmPerS2();
            double deviation = (mean[A] - lane.decelerationMmPerS2(mean[LANE])) / level;
            double variance = cov[A * size + A] / (level * level) - 2 * cov[A * size + LANE] / level
                    + cov[LANE * size + LANE];
            lane.learnSpread(deviation, variance);
            lane.learnNoise(chiSquare / freedom(), freedom());
            lane.learn(mean, cov, size, LANE);
        }
    }

    /** Whether it leaves the lane a green on which balls stop, and moves its speed by no more than chance may. */
    private boolean isBelievable(LaneBelief lane) {
        double moved = mean[LANE] - lane.mean[0];
        double spent = lane.covariance[0] - cov[LANE * size + LANE];
        return mean[A] > 0 && lane.decelerationMmPerS2(mean[LANE]) > 0
                && moved * moved < SURPRISE * Math.max(spent, 1e-12);
    }
}
