package org.cupbeam.studio.insight.turn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.Random;
import org.junit.jupiter.api.Test;

class StretchesTest {
    private static final double VARIANCE = 0.35 * 0.35;

    /** Against the sum over every one of the 2^8 ways to cut nine blocks into stretches. */
    @Test
    void chancesAreThoseOfAllWaysToCut() {
        int blocks = 9;
        double hazard = 0.17;
        Random random = new Random(9);
        double[][] sums = new double[2][blocks + 1];
        for (int block = 0; block < blocks; block++) {
            sums[0][block + 1] = sums[0][block] + (block < 5 ? 6 : -4) + 3 * random.nextGaussian();
            sums[1][block + 1] = sums[1][block] + random.nextDouble(8, 20);
        }
        double[] turned = new double[blocks];
        double all = 0;
        for (int cuts = 0; cuts < 1 << blocks - 1; cuts++) {
            double weight = weight(sums, cuts, blocks, hazard);
            all += weight;
            for (int block = 1; block < blocks; block++) {
                turned[block] += (cuts >> block - 1 & 1) == 1 ? weight : 0;
            }
        }
        double[][] chances = Stretches.Blocks.of(Collections.singletonList(sums), hazard, 5);
        for (int block = 0; block < blocks; block++) {
            assertThat(chances[0][block]).isCloseTo(turned[block] / all, within(1e-12));
        }
        double lately = 0;
        for (int cuts = 0; cuts < 1 << blocks - 1; cuts++) {
            lately += cuts >> blocks - 6 != 0 ? weight(sums, cuts, blocks, hazard) : 0;
        }
        assertThat(chances[1][blocks - 1]).isCloseTo(lately / all, within(1e-12));
    }

    private static double weight(double[][] sums, int cuts, int blocks, double hazard) {
        double weight = 1;
        int from = 0;
        for (int to = 1; to <= blocks; to++) {
            boolean cut = to < blocks && (cuts >> to - 1 & 1) == 1;
            weight *= to == blocks ? 1 : cut ? hazard : 1 - hazard;
            if (cut || to == blocks) {
                double score = sums[0][to] - sums[0][from];
                double told = sums[1][to] - sums[1][from];
                weight *= Math.exp(score * score / (2 * (told + 1 / VARIANCE))) / Math.sqrt(1 + VARIANCE * told);
                from = to;
            }
        }
        return weight;
    }
}
