package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;

class FinishEstimatorTest {
    private static final long SEED = Long.getLong("cupbeam.seed", 2_718_281);
    private static final Rig FULL = PracticeRigs.FULL.level();
    private static final double SLOWS = GreenSpeed.levelDecelerationMmPerS2(10);

    private final Lay lay = new Lay(FULL);
    private final LaneBelief lane = new LaneBelief(FULL);
    private final FinishEstimator estimator = new FinishEstimator(lay);

    @Test
    void anExactRollOnAGreenAsReadStopsWhereItShould() {
        FakeBall fake = stoppingAt(700, SLOWS);
        estimate(Seen.exactly(FULL).ball(fake, lane));

        assertThat(estimator.fits()).isTrue();
        assertThat(estimator.finishMm()).isCloseTo(700, within(0.01));
        assertThat(estimator.speedAtMmPerS(0)).isCloseTo(fake.speedAtMmPerS(0), within(0.01));
        assertThat(estimator.speedAtMmPerS(701)).isNaN();
    }

    @Property(tries = 100)
    void edgeByEdgeIsTheSameAsAllAtOnce(@ForAll long seed, @ForAll @DoubleRange(min = -100, max = 2500) double finishMm) {
        Random random = new Random(seed);
        LaneBelief taught = new LaneBelief(FULL);
        Seen seen = new Seen(FULL, 1, 60e-6, 25e-6, random);
        // The second putt starts from what the first has taught, correlations and all.
        for (int putt = 0; putt < 2; putt++) {
            Ball ball = seen.ball(stoppingAt(finishMm, SLOWS * (1 + 0.01 * random.nextGaussian())), taught);
            DenseSolve dense = new DenseSolve(ball.crossings(), lay, ball.approach(), taught);
            estimator.estimate(ball.crossings(), 0, ball.crossings().count(), ball.approach(), taught);

            double sd = dense.finishSdMm();
            assertThat(estimator.finishMm()).isCloseTo(dense.finishMm(), within(1e-3 * sd));
            assertThat(estimator.finishSdMm()).isCloseTo(sd, within(1e-3 * sd));
            double noise = taught.noise();
            estimator.teach(taught);
            if (taught.noise() != noise) {
                taughtTheSame(taught, dense);
            }
        }
    }

    /** What the first putt teaches correlates next to nothing in places, where the halves of the matrix round differently. */
    @Test
    void edgeByEdgeIsTheSameWhereCorrelationsAreNextToNothing() {
        edgeByEdgeIsTheSameAsAllAtOnce(-116567, 2499.85);
    }

    private static void taughtTheSame(LaneBelief taught, DenseSolve dense) {
        for (int i = 0; i < taught.size; i++) {
            double sd = Math.sqrt(dense.covariance.getEntry(3 + i, 3 + i));
            assertThat(taught.mean[i]).isCloseTo(dense.mean.getEntry(3 + i), within(1e-3 * sd));
            for (int j = 0; j < taught.size; j++) {
                double scale = sd * Math.sqrt(dense.covariance.getEntry(3 + j, 3 + j));
                double drift = i == 0 && j == 0 ? LaneBelief.DRIFT_SD * LaneBelief.DRIFT_SD : 0;
                assertThat(taught.covariance[taught.at(i, j)] - drift)
                        .isCloseTo(dense.covariance.getEntry(3 + i, 3 + j), within(2e-3 * scale));
            }
        }
    }

    @Test
    void itLearnsAGreensSpeedItsBeamsAndItsReceiversFromManyPutts() {
        Random random = new Random(SEED);
        Seen seen = new Seen(FULL, 1, 60e-6, 25e-6, random);
        double slower = 0.025;
        for (int i = 0; i < 200; i++) {
            double slows = SLOWS * (1 + slower + 0.005 * random.nextGaussian());
            estimate(seen.ball(stoppingAt(-50 + 2200 * random.nextDouble(), slows), lane));
            estimator.teach(lane);
        }

        assertThat(lane.stimpFt()).as("seed %d", SEED).isCloseTo(10 / (1 + slower), within(3 * lane.stimpSdFt()));
        assertThat(lane.stimpSdFt()).isLessThan(0.02);
        for (int i = 0; i < lay.beams; i++) {
            assertThat(sd(lane.lag(i))).as("lag %d", i).isLessThan(10e-6);
            assertThat(lane.mean[lane.lag(i)]).as("lag %d, seed %d", i, SEED)
                    .isCloseTo(seen.lagS[i], within(4 * sd(lane.lag(i))));
        }
        assertThat(apart(lane.mean, 0, 1)).as("before the hole, seed %d", SEED)
                .isCloseTo(seen.offsetMm[1] - seen.offsetMm[0], within(0.1));
        assertThat(apart(lane.mean, 4, 5)).as("past the limit, seed %d", SEED)
                .isCloseTo(seen.offsetMm[5] - seen.offsetMm[4], within(0.1));
        assertThat(surprise(seen, slower)).as("chi-square of all that was planted, seed %d", SEED)
                .isLessThan(new ChiSquaredDistribution(lane.size).inverseCumulativeProbability(0.999));
    }

    /** How far what was planted is from what was learnt, in the measure of the covariance learnt. */
    private double surprise(Seen seen, double slower) {
        RealVector off = new ArrayRealVector(lane.mean).mapMultiply(-1);
        off.addToEntry(0, slower);
        Array2DRowRealMatrix covariance = new Array2DRowRealMatrix(lane.size, lane.size);
        for (int i = 0; i < lane.size; i++) {
            for (int j = 0; j < lane.size; j++) {
                covariance.setEntry(i, j, lane.covariance[lane.at(i, j)]);
            }
        }
        for (int i = 0; i < lay.beams; i++) {
            off.addToEntry(LaneBelief.offset(i), seen.offsetMm[i]);
            off.addToEntry(lane.lag(i), seen.lagS[i]);
        }
        return off.dotProduct(new LUDecomposition(covariance, 0).getSolver().solve(off));
    }

    @Test
    void crossingsThatAreNoOneRollDoNotFitAndTeachNothing() {
        Ball ball = Seen.exactly(FULL).ball(stoppingAt(300, SLOWS), lane);
        Crossings crossings = ball.crossings();
        int last = crossings.count() - 1;
        double onS = crossings.onS(last) + 0.2;
        double offS = crossings.offS(last) + 0.2;
        int beam = crossings.beam(last);
        crossings.removeFrom(last);
        crossings.add(beam, onS, offS);
        estimate(ball);

        assertThat(estimator.fits()).isFalse();
        double[] before = lane.covariance.clone();
        estimator.teach(lane);
        assertThat(lane.covariance).isEqualTo(before);
    }

    @Test
    void aStretchThatTheRimBeganIsLessSure() {
        Ball ball = Seen.exactly(FULL).ball(stoppingAt(700, SLOWS), lane);
        estimate(ball);
        double free = estimator.finishSdMm();

        estimator.estimateDeflected(ball.crossings(), 2, 4, ball.approach(), lane);

        assertThat(estimator.finishMm()).isCloseTo(700, within(0.1));
        assertThat(estimator.finishSdMm()).isGreaterThan(5 * free);
    }

    private void estimate(Ball ball) {
        estimator.estimate(ball.crossings(), 0, ball.crossings().count(), ball.approach(), lane);
    }

    private double sd(int index) {
        return Math.sqrt(lane.covariance[lane.at(index, index)]);
    }

    private static double apart(double[] mean, int beam, int other) {
        return mean[LaneBelief.offset(other)] - mean[LaneBelief.offset(beam)];
    }

    private static FakeBall stoppingAt(double finishMm, double slows) {
        return new FakeBall(0, -3000, Math.sqrt(2 * slows * (finishMm + 3000)), slows, Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
    }
}
