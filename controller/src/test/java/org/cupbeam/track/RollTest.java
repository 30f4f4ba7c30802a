package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.stat.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;

class RollTest {
    private static final long SEED = Long.getLong("cupbeam.seed", 3_141_592);
    private static final double HALF_MM = 21;
    private static final double SLOWS = 548.64;
    private static final double SLOWS_SD = 10;
    /** Of a thousand such samples that are as they should be, one would fail. */
    private static final double RARE = 0.001;

    private final Roll roll = new Roll();

    @Property(tries = 200)
    void aParabolaIsRecoveredFromThreeCrossings(@ForAll @DoubleRange(min = 950, max = 1600) double finishMm,
                                                @ForAll @DoubleRange(min = 300, max = 800) double slows) {
        FakeBall ball = rolling(Math.sqrt(2 * slows * (finishMm + 400)), slows);
        roll.reset(500, 1e4);
        for (double mm : new double[] {100, 500, 900}) {
            roll.cross(ball.timeAtS(mm - HALF_MM), ball.timeAtS(mm + HALF_MM), mm, HALF_MM);
        }

        assertThat(roll.finishMm()).isCloseTo(finishMm, within(0.5));
        assertThat(roll.stopS()).isCloseTo(ball.stopsS(), within(2e-3));
        assertThat(roll.timeAtS(700)).isCloseTo(ball.timeAtS(700), within(1e-5));
        assertThat(roll.speedAtMmPerS(700)).isCloseTo(ball.speedAtMmPerS(700), within(0.1));
        assertThat(roll.speedMmPerS(0.2) - roll.speedMmPerS(0.4)).isCloseTo(0.2 * slows, within(0.1));
        assertThat(roll.positionMm(ball.timeAtS(300))).isCloseTo(300, within(0.01));
    }

    @Test
    void whereItDoesNotComeItHasNoTimeAndNoSpeed() {
        FakeBall ball = rolling(1000, SLOWS);
        roll.reset(SLOWS, SLOWS_SD);
        roll.cross(ball.timeAtS(79), ball.timeAtS(121), 100, HALF_MM);

        assertThat(roll.timeAtS(ball.finishMm() + 10)).isNaN();
        assertThat(roll.speedAtMmPerS(ball.finishMm() + 10)).isNaN();
        assertThat(roll.timeAtS(ball.finishMm() - 10)).isCloseTo(ball.timeAtS(ball.finishMm() - 10), within(0.05));
    }

    @Test
    void aCopyGoesItsOwnWay() {
        roll.reset(SLOWS, SLOWS_SD);
        roll.cross(0, 0.04, 100, HALF_MM);
        Roll copy = new Roll();
        copy.copyFrom(roll);
        double finish = roll.finishMm();

        copy.cross(0.5, 0.6, 500, HALF_MM);

        assertThat(roll.finishMm()).isEqualTo(finish);
        assertThat(copy.finishMm()).isNotEqualTo(finish);
    }

    /** Where a model and its noise are true, what each crossing adds is chi-square, and errors are as large as said. */
    @Test
    void misfitsAndErrorsAreDistributedAsTheirNoiseSays() {
        Random random = new Random(SEED);
        int balls = 1500;
        double[] second = new double[balls];
        double[] third = new double[balls];
        double[] arrival = new double[balls];
        double[] finish = new double[balls];
        for (int i = 0; i < balls; i++) {
            FakeBall ball = rolling(1500, SLOWS + SLOWS_SD * random.nextGaussian());
            roll.reset(SLOWS, SLOWS_SD);
            cross(ball, 100, random);
            second[i] = cross(ball, 160, random);
            third[i] = cross(ball, 900, random);
            finish[i] = (roll.finishMm() - ball.finishMm()) / roll.finishSdMm();
            double reachedS = ball.timeAtS(1400 - HALF_MM + Roll.BEAM_SD_MM * random.nextGaussian());
            arrival[i] = roll.arrive(reachedS + Roll.EDGE_SD_S * random.nextGaussian(), 1400, HALF_MM);
        }

        isDistributedAs(new ChiSquaredDistribution(2), second, "second crossing");
        isDistributedAs(new ChiSquaredDistribution(2), third, "third crossing");
        isDistributedAs(new ChiSquaredDistribution(1), arrival, "arrival");
        isDistributedAs(new NormalDistribution(), finish, "finish");
    }

    private double cross(FakeBall ball, double mm, Random random) {
        double trueMm = mm + Roll.BEAM_SD_MM * random.nextGaussian();
        double trueHalfMm = HALF_MM + Roll.CHORD_SD_MM / 2 * random.nextGaussian();
        return roll.cross(ball.timeAtS(trueMm - trueHalfMm) + Roll.EDGE_SD_S * random.nextGaussian(),
                ball.timeAtS(trueMm + trueHalfMm) + Roll.EDGE_SD_S * random.nextGaussian(), mm, HALF_MM);
    }

    private static void isDistributedAs(RealDistribution expected, double[] sample, String what) {
        assertThat(new KolmogorovSmirnovTest().kolmogorovSmirnovTest(expected, sample))
                .as("p of the %s (Kolmogorov-Smirnov), seed %d", what, SEED).isGreaterThan(RARE);
    }

    private static FakeBall rolling(double speed, double slows) {
        return new FakeBall(0, -400, speed, slows, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }
}
