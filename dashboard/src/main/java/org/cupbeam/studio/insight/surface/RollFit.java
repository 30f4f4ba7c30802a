package org.cupbeam.studio.insight.surface;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.util.MathArrays;

/**
 * How balls slowed that rolled through all beams, by all rolls of a test together: each ball's place, speed and deceleration,
 * and what they share, how far each beam stands from where the rig file says, how late its receiver is, and how much longer
 * it takes to clear than to block. Linear least squares with priors for what is shared; balls that roll both ways and at
 * different speeds tell much of it.
 */
final class RollFit {
    /** A beam may stand so far off, and its receiver lag so much (standard deviations); as the lanes believe. */
    private static final double PLACE_SD_MM = 1.1;
    private static final double LAG_SD_S = 60e-6;
    /** Error of one edge's time, and of how much of a ball a beam sees. */
    private static final double EDGE_SD_S = 30e-6;
    private static final double LIMB_SD_MM = 0.05;
    /** Lags are counted in tenths of ms, so that all unknowns are of like size. */
    private static final double LAG_UNIT_S = 1e-4;
    private static final double DECELERATION_UNIT = 100;
    private static final double SPEED_UNIT = 100;
    /** Now and then a receiver chatters, and an edge is off by far more: the errors have long tails. */
    private static final double TAILS = 4;
    private static final int ROUNDS = 15;

    private final Rolled rolled;
    private final int count;
    private final int size;
    private RealMatrix normal;
    private ArrayRealVector right;
    private RealMatrix covariance;
    private double[] solved;

    RollFit(Rolled rolled) {
        this.rolled = rolled;
        count = rolled.balls().size();
        size = 3 * count + 3 * rolled.beams().size();
        solve();
    }

    /** Again and again, each edge weighing less the worse it fitted, as Student's distribution has it. */
    private void solve() {
        int edges = rolled.balls().stream().mapToInt(ball -> 2 * ball.crossings().size()).sum();
        double[] weights = new double[edges];
        Arrays.fill(weights, 1);
        for (int round = 0; round < ROUNDS; round++) {
            gather(weights);
            covariance = new CholeskyDecomposition(normal, 1e-9, 1e-14).getSolver().getInverse();
            solved = covariance.operate(right).toArray();
            eachEdge((edge, row, observed, sd) -> {
                double off = (MathArrays.linearCombination(row, solved) - observed) / sd;
                weights[edge] = (TAILS + 1) / (TAILS + off * off);
            });
        }
        double[] squares = {0};
        eachEdge((edge, row, observed, sd) -> {
            double off = (MathArrays.linearCombination(row, solved) - observed) / sd;
            squares[0] += weights[edge] * off * off;
        });
        covariance = covariance.scalarMultiply(Math.max(1, squares[0] / Math.max(1, edges - 3 * count)));
    }

    private void gather(double[] weights) {
        normal = new Array2DRowRealMatrix(size, size);
        right = new ArrayRealVector(size);
        for (int b = 0; b < rolled.beams().size(); b++) {
            normal.addToEntry(place(b), place(b), 1 / (PLACE_SD_MM * PLACE_SD_MM));
            normal.addToEntry(lag(b), lag(b), LAG_UNIT_S * LAG_UNIT_S / (LAG_SD_S * LAG_SD_S));
            normal.addToEntry(delay(b), delay(b), LAG_UNIT_S * LAG_UNIT_S / (LAG_SD_S * LAG_SD_S));
        }
        eachEdge((edge, row, observed, sd) -> add(row, observed, sd / Math.sqrt(weights[edge])));
    }

    private interface Edge {
        void take(int edge, double[] row, double observedMm, double sdMm);
    }

    private void eachEdge(Edge each) {
        int edge = 0;
        for (int i = 0; i < count; i++) {
            Rolled.Ball ball = rolled.balls().get(i);
            double way = ball.toward() ? 1 : -1;
            for (Rolled.Crossing crossing : ball.crossings()) {
                Rolled.Beam beam = rolled.beams().get(crossing.beam());
                double half = beam.chordMm() / 2;
                double speed = beam.chordMm() / (crossing.offS() - crossing.onS());
                double sd = Math.hypot(speed * EDGE_SD_S, LIMB_SD_MM);
                double[] on = row(i, crossing.onS());
                on[place(crossing.beam())] = -way;
                on[delay(crossing.beam())] = -speed * LAG_UNIT_S;
                each.take(edge++, on, way * beam.positionMm() - half, sd);
                double[] off = row(i, crossing.offS());
                off[place(crossing.beam())] = -way;
                off[delay(crossing.beam())] = -speed * LAG_UNIT_S;
                off[lag(crossing.beam())] = -speed * LAG_UNIT_S;
                each.take(edge++, off, way * beam.positionMm() + half, sd);
            }
        }
    }

    private int place(int beam) {
        return 3 * count + beam;
    }

    private int lag(int beam) {
        return 3 * count + rolled.beams().size() + beam;
    }

    /** How late its receiver is, which a ball that comes from the other side sees the other way round. */
    private int delay(int beam) {
        return 3 * count + 2 * rolled.beams().size() + beam;
    }

    /** Where ball i is at a time along its own way, by its unknowns. */
    private double[] row(int i, double timeS) {
        double[] row = new double[size];
        row[3 * i] = 1;
        row[3 * i + 1] = SPEED_UNIT * timeS;
        row[3 * i + 2] = -DECELERATION_UNIT * timeS * timeS / 2;
        return row;
    }

    private void add(double[] row, double observed, double sd) {
        for (int i = 0; i < size; i++) {
            if (row[i] != 0) {
                double weight = row[i] / (sd * sd);
                right.addToEntry(i, weight * observed);
                for (int j = 0; j < size; j++) {
                    normal.addToEntry(i, j, weight * row[j]);
                }
            }
        }
    }

    /** Each ball's, in mm/s², in the order of the rolls. */
    double decelerationMmPerS2(int roll) {
        return DECELERATION_UNIT * solved[3 * roll + 2];
    }

    /** All decelerations of one way. */
    List<Double> decelerations(boolean toward) {
        return IntStream.range(0, count).filter(i -> rolled.balls().get(i).toward() == toward)
                .mapToObj(this::decelerationMmPerS2).toList();
    }

    /**
     * What is uncertain of a weighted sum of the decelerations because of what all balls share, and so no more balls average
     * out: standard deviation, mm/s².
     */
    double sharedSd(double[] weights) {
        double all = 0;
        double own = 0;
        for (int i = 0; i < count; i++) {
            own += weights[i] * weights[i] * ownVariance(i);
            for (int j = 0; j < count; j++) {
                all += weights[i] * weights[j] * covariance.getEntry(3 * i + 2, 3 * j + 2);
            }
        }
        return DECELERATION_UNIT * Math.sqrt(Math.max(0, all - own));
    }

    /** Of one ball's deceleration, were all that is shared known. */
    private double ownVariance(int i) {
        RealMatrix block = normal.getSubMatrix(3 * i, 3 * i + 2, 3 * i, 3 * i + 2);
        return MatrixUtils.inverse(block).getEntry(2, 2);
    }
}
