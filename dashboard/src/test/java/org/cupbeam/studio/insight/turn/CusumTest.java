package org.cupbeam.studio.insight.turn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class CusumTest {
    /**
     * D. C. Montgomery and G. C. Runger, Applied Statistics and Probability for Engineers, example 16-6, table 16-8:
     * target 99, K = 1, H = 10.
     */
    @Test
    void theRecursionIsTheBooks() {
        double[] values = {102.0, 94.8, 98.3, 98.4, 102.0, 98.5, 99.0, 97.7, 100.0, 98.1, 101.3, 98.7, 101.1, 98.4, 97.0,
                96.7, 100.3, 101.4, 97.2, 101.0};
        double[] highs = {2.0, 0, 0, 0, 2.0, 0.5, 0, 0, 0, 0, 1.3, 0, 1.1, 0, 0, 0, 0.3, 1.7, 0, 1.0};
        double[] lows = {0, 3.2, 2.9, 2.5, 0, 0, 0, 0.3, 0, 0, 0, 0, 0, 0, 1.0, 2.3, 0, 0, 0.8, 0};
        double high = 0;
        double low = 0;
        for (int i = 0; i < values.length; i++) {
            high = Cusum.next(high, values[i] - 100);
            low = Cusum.next(low, 98 - values[i]);
            assertThat(high).isCloseTo(highs[i], within(1e-9)).isLessThan(10);
            assertThat(low).isCloseTo(lows[i], within(1e-9)).isLessThan(10);
        }
    }

    /**
     * Target 325, k 0.3175, h 4.1959, computed independently (SciPy). The data are given as the NIST handbook's (6.3.2.3)
     * from memory, so this checks the recursion and not the handbook.
     */
    @Test
    void theRecursionSignalsWhereAnIndependentComputationDoes() {
        double[] values = {324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
                324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350};
        double[] sums = new double[values.length];
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            sum = Cusum.next(sum, values[i] - 325 - 0.3175);
            sums[i] = sum;
        }
        assertThat(sums[12]).isCloseTo(3.0075, within(1e-9)).isLessThan(4.1959);
        assertThat(sums[13]).isCloseTo(4.9400, within(1e-9)).isGreaterThan(4.1959);
        assertThat(sums[19]).isCloseTo(19.0350, within(1e-9));
    }

    /**
     * Make rate 0.6 before, 0.4 after; computed independently (SciPy), in the form of M. R. Reynolds and Z. G. Stoumbos,
     * Journal of Quality Technology 31, 87 (1999), the reference from memory.
     */
    @Test
    void evidenceOfPuttsIsTheLogarithmOfALikelihoodRatio() {
        double ratio = 0.4 / 0.6 / (0.6 / 0.4);
        assertThat(Cusum.ofSuccess(0.6, ratio)).isCloseTo(-0.4054651081, within(1e-10));
        assertThat(Cusum.ofFailure(0.6, ratio)).isCloseTo(0.4054651081, within(1e-10));
        int[] made = {1, 1, 0, 1, 0, 0, 0, 1, 0, 0, 0, 0};
        double[] sums = {0, 0, 0.405465, 0, 0.405465, 0.810930, 1.216395, 0.810930, 1.216395, 1.621860, 2.027326, 2.432791};
        double sum = 0;
        for (int i = 0; i < made.length; i++) {
            sum = Cusum.next(sum, made[i] == 1 ? Cusum.ofSuccess(0.6, ratio) : Cusum.ofFailure(0.6, ratio));
            assertThat(sum).isCloseTo(sums[i], within(6e-7));
        }
    }

    /** A fair walk of whole steps held at 0 comes to h for the first time after h(h + 1) steps (arithmetic). */
    @Test
    void theTimeToAFalseAlarmIsThatOfAWalk() {
        for (int limit : new int[] {4, 8, 10, 16, 20}) {
            int passed = limit + 1;
            assertThat(Limit.puttsToAlarm(limit, new double[] {1, -1}, new double[] {0.5, 0.5}))
                    .isCloseTo(passed * (passed + 1), within(1e-6));
        }
    }

    /** The limit for a stated rate, against charts of putts from many distances on which nothing ever changes. */
    @Test
    void falseAlarmsComeAsRarelyAsStated() {
        double[] chances = {0.95, 0.75, 0.55, 0.4, 0.3, 0.2};
        for (double ratio : new double[] {1.6, 1 / 1.6}) {
            double[] evidence = new double[2 * chances.length];
            double[] share = new double[evidence.length];
            for (int i = 0; i < chances.length; i++) {
                evidence[2 * i] = Cusum.ofSuccess(chances[i], ratio);
                evidence[2 * i + 1] = Cusum.ofFailure(chances[i], ratio);
                share[2 * i] = chances[i] / chances.length;
                share[2 * i + 1] = (1 - chances[i]) / chances.length;
            }
            double limit = Limit.forOneFalseAlarmIn(5000, evidence, share);
            Random random = new Random(31);
            int alarms = 1500;
            long putts = 0;
            for (int alarm = 0; alarm < alarms; alarm++) {
                double sum = 0;
                while (sum <= limit) {
                    int from = random.nextInt(chances.length);
                    boolean made = random.nextDouble() < chances[from];
                    sum = Cusum.next(sum, evidence[2 * from + (made ? 0 : 1)]);
                    putts++;
                }
            }
            System.out.printf("odds ratio %.3f, limit %.3f for one false alarm in 5000 putts, seed 31: one in %d%n", ratio,
                    limit, putts / alarms);
            assertThat((double) putts / alarms).isCloseTo(5000, within(600.0));
        }
    }
}
