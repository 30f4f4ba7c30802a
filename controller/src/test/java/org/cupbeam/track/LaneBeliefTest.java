package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.green.GreenSpeed;
import org.junit.jupiter.api.Test;

class LaneBeliefTest {
    private static final long SEED = Long.getLong("cupbeam.seed", 1_618_033);

    private final LaneBelief lane = new LaneBelief(PracticeRigs.STANDARD.on(11, 2, 0));

    @Test
    void itBeginsWithTheReadingAndSomeDoubt() {
        assertThat(lane.stimpFt()).isEqualTo(11);
        assertThat(lane.stimpSdFt()).isBetween(0.1, 0.5);
        assertThat(lane.decelerationMmPerS2()).isCloseTo(GreenSpeed.decelerationMmPerS2(11, 2), within(1e-9));
        assertThat(lane.deflectedSd()).isGreaterThan(lane.decelerationSd());
    }

    @Test
    void aGreenSlowerThanItsReadingHasMoreFrictionAndTheSameSlope() {
        double[] mean = new double[lane.size];
        mean[0] = 0.05;
        lane.learn(mean, new double[lane.size * lane.size], lane.size, 0);

        assertThat(lane.stimpFt()).isCloseTo(11 / 1.05, within(1e-12));
        assertThat(lane.decelerationMmPerS2())
                .isCloseTo(GreenSpeed.decelerationMmPerS2(11 / 1.05, 2), within(1e-9));
        assertThat(lane.stimpSdFt()).as("it dries, however well it is known").isPositive().isLessThan(0.01);
    }

    @Test
    void onlyTheLanesPartOfAJointEstimateIsTaken() {
        int joint = lane.size + 2;
        double[] mean = new double[joint];
        double[] covariance = new double[joint * joint];
        for (int i = 0; i < joint; i++) {
            mean[i] = i;
            for (int j = 0; j < joint; j++) {
                covariance[i * joint + j] = 100 * i + j;
            }
        }

        lane.learn(mean, covariance, joint, 2);

        assertThat(lane.mean[0]).isEqualTo(2);
        assertThat(lane.mean[lane.size - 1]).isEqualTo(joint - 1);
        assertThat(lane.covariance[lane.at(1, 2)]).isEqualTo(304);
    }

    @Test
    void itLearnsByHowMuchPuttsDiffer() {
        Random random = new Random(SEED);
        LaneBelief even = new LaneBelief(PracticeRigs.STANDARD.level());
        for (int i = 0; i < 2000; i++) {
            double measuring = 0.002;
            learn(lane, 0.012, measuring, random);
            learn(even, 0.003, measuring, random);
        }

        double share = lane.decelerationSd() / lane.levelMmPerS2();
        double evenShare = even.decelerationSd() / even.levelMmPerS2();
        double reading = Math.sqrt(lane.covariance[0]);
        assertThat(Math.sqrt(share * share - reading * reading)).as("seed %d", SEED).isCloseTo(0.012, within(0.0012));
        assertThat(Math.sqrt(evenShare * evenShare - reading * reading)).as("seed %d", SEED)
                .isCloseTo(0.003, within(0.0006));
    }

    /** Of a putt that differs by so much and is measured so well, what its estimate says: drawn in to the mean. */
    private static void learn(LaneBelief lane, double spread, double measuring, Random random) {
        double seen = spread * random.nextGaussian() + measuring * random.nextGaussian();
        double believed = Math.pow(lane.decelerationSd() / lane.levelMmPerS2(), 2) - lane.covariance[0];
        double weight = believed / (believed + measuring * measuring);
        lane.learnSpread(weight * seen, (1 - weight) * believed);
    }

    @Test
    void aPuttThatCouldNotTellLeavesTheSpreadAsItIs() {
        double before = lane.decelerationSd();
        for (int i = 0; i < 100; i++) {
            lane.learnSpread(0, 1);
        }

        assertThat(lane.decelerationSd()).isEqualTo(before);
    }

    @Test
    void itLearnsHowNoisyEdgesAre() {
        Random random = new Random(SEED);
        for (int i = 0; i < 3000; i++) {
            double chiSquare = 0;
            for (int k = 0; k < 6; k++) {
                chiSquare += Math.pow(random.nextGaussian(), 2);
            }
            lane.learnNoise(2.5 * chiSquare / 6 / lane.noise(), 6);
        }

        assertThat(lane.noise()).as("seed %d", SEED).isCloseTo(2.5, within(0.4));
    }

    @Test
    void noiseHasBoundsSoThatNoStreakOfPuttsMakesItCertainOrBlind() {
        for (int i = 0; i < 5000; i++) {
            lane.learnNoise(0, 6);
        }
        assertThat(lane.noise()).isBetween(0.1, 1.0);
        for (int i = 0; i < 5000; i++) {
            lane.learnNoise(1e6, 6);
        }
        assertThat(lane.noise()).isBetween(10.0, 100.0);
    }
}
