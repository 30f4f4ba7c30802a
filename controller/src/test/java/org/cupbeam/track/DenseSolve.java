package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * The finish estimator's problem put otherwise: all edges at once, in unknowns scaled by their prior, solved by a QR
 * decomposition (commons-math). Unknown are place, speed and deceleration at the first edge's time, then the lane's.
 */
final class DenseSolve {
    private static final int LANE = 3;

    final RealVector mean;
    final RealMatrix covariance;

    DenseSolve(Crossings crossings, Lay lay, Roll roll, LaneBelief lane) {
        RealVector prior = priorMean(lane);
        RealMatrix root = new CholeskyDecomposition(priorCovariance(lane), 1e-12, 1e-30).getL();
        int edges = 2 * crossings.count();
        int size = prior.getDimension();
        RealMatrix rows = new Array2DRowRealMatrix(edges + size, size);
        RealVector sides = new ArrayRealVector(edges + size);
        for (int i = 0; i < edges; i++) {
            int beam = crossings.beam(i / 2);
            boolean trailing = i % 2 == 1;
            double s = trailing ? crossings.offS(i / 2) : crossings.onS(i / 2);
            double speed = roll.speedMmPerS(s);
            double sd = Math.sqrt((Math.pow(speed * FinishEstimator.EDGE_SD_S, 2)
                    + Math.pow(FinishEstimator.EDGE_SD_MM, 2)) * lane.noise());
            RealVector row = new ArrayRealVector(size);
            row.setEntry(0, 1);
            row.setEntry(1, s);
            row.setEntry(2, -s * s / 2);
            row.setEntry(LANE + LaneBelief.offset(beam), -1);
            row.setEntry(LANE + lane.lag(beam), trailing ? -speed : 0);
            double limbAtMm = trailing ? lay.departureMm(beam) : lay.arrivalMm(beam);
            rows.setRowVector(i, root.preMultiply(row).mapDivide(sd));
            sides.setEntry(i, (limbAtMm - row.dotProduct(prior)) / sd);
        }
        rows.setSubMatrix(MatrixUtils.createRealIdentityMatrix(size).getData(), edges, 0);
        QRDecomposition qr = new QRDecomposition(rows);
        mean = root.operate(qr.getSolver().solve(sides)).add(prior);
        RealMatrix triangle = qr.getR().getSubMatrix(0, size - 1, 0, size - 1);
        RealMatrix spread = root.multiply(new LUDecomposition(triangle, 0).getSolver().getInverse());
        covariance = spread.multiply(spread.transpose());
    }

    static RealVector priorMean(LaneBelief lane) {
        return new ArrayRealVector(new double[] {0, 1000, lane.decelerationMmPerS2()}).append(
                new ArrayRealVector(lane.mean));
    }

    /** A putt's own deceleration is the lane's, give or take what putts differ by. */
    static RealMatrix priorCovariance(LaneBelief lane) {
        RealMatrix prior = new Array2DRowRealMatrix(LANE + lane.size, LANE + lane.size);
        prior.setEntry(0, 0, 1e7);
        prior.setEntry(1, 1, 4e6);
        prior.setEntry(2, 2, lane.decelerationSd() * lane.decelerationSd());
        for (int i = 0; i < lane.size; i++) {
            double shared = lane.levelMmPerS2() * lane.covariance[i];
            prior.setEntry(2, LANE + i, shared);
            prior.setEntry(LANE + i, 2, shared);
            for (int j = 0; j < lane.size; j++) {
                prior.setEntry(LANE + i, LANE + j, symmetric(lane, i, j));
            }
        }
        return prior;
    }

    /** The two halves differ by what was rounded: a small part of the two spreads, but not of a covariance that is next to nothing. */
    private static double symmetric(LaneBelief lane, int i, int j) {
        double one = lane.covariance[lane.at(i, j)];
        double other = lane.covariance[lane.at(j, i)];
        double spreads = Math.sqrt(lane.covariance[lane.at(i, i)] * lane.covariance[lane.at(j, j)]);
        assertThat(one).isCloseTo(other, within(1e-9 * spreads));
        return (one + other) / 2;
    }

    double finishMm() {
        return finishMm(mean);
    }

    private static double finishMm(RealVector at) {
        return at.getEntry(0) + at.getEntry(1) * at.getEntry(1) / (2 * at.getEntry(2));
    }

    /** By differences, one standard deviation either way along each unknown. */
    double finishSdMm() {
        RealVector gradient = new ArrayRealVector(mean.getDimension());
        for (int i = 0; i < LANE; i++) {
            double step = 1e-3 * Math.sqrt(covariance.getEntry(i, i));
            RealVector one = mean.copy();
            one.addToEntry(i, step);
            RealVector other = mean.copy();
            other.addToEntry(i, -step);
            gradient.setEntry(i, (finishMm(one) - finishMm(other)) / (2 * step));
        }
        return Math.sqrt(gradient.dotProduct(covariance.operate(gradient)));
    }
}
