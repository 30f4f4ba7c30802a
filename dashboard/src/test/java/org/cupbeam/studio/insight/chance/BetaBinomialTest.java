package org.cupbeam.studio.insight.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.junit.jupiter.api.Test;

class BetaBinomialTest {
    /** Computed independently (SciPy), eight decimals. */
    @Test
    void chancesAreTheKnownOnes() {
        double[] expected = {0.06593407, 0.10989011, 0.13486513, 0.14385614, 0.13986014, 0.12587413, 0.10489510,
                0.07992008, 0.05394605, 0.02997003, 0.01098901};
        BetaBinomial next = new BetaBinomial(10, 2, 3);
        for (int made = 0; made <= 10; made++) {
            assertThat(next.of(made)).isCloseTo(expected[made], within(6e-9));
        }
        assertThat(next.mean()).isCloseTo(4, within(1e-12));
        assertThat(next.variance()).isCloseTo(6, within(1e-12));
    }

    /** With nothing known, each count is as likely as any other: 1/11 each (arithmetic). */
    @Test
    void withNothingKnownEachCountIsAsLikely() {
        for (int made = 0; made <= 10; made++) {
            assertThat(new BetaBinomial(10, 1, 1).of(made)).isCloseTo(1.0 / 11, within(1e-12));
        }
    }

    /** The chance behind it is a beta's: SciPy and commons-math agree on Beta(8, 4) below 0.7 at 0.5695623388. */
    @Test
    void withManyTriesTheShareIsTheChanceBehindIt() {
        assertThat(BetaDistribution.of(8, 4).cumulativeProbability(0.7)).isCloseTo(0.5695623388, within(1e-10));
        BetaBinomial many = new BetaBinomial(20_000, 8, 4);
        double below = 0;
        for (int made = 0; made <= 14_000; made++) {
            below += many.of(made);
        }
        assertThat(below).isCloseTo(0.5695623388, within(3e-4));
    }

    @Test
    void momentsAreMatchedWhereTheChanceIsWellKnown() {
        BetaBinomial next = BetaBinomial.next(10, 0.4, 0.2);
        double chanceSd = 0.2 * 0.4 * 0.6;
        assertThat(next.mean()).isCloseTo(4, within(1e-12));
        // Law of total variance: n E[p q] + n² Var p.
        assertThat(next.variance()).isCloseTo(10 * (0.24 - chanceSd * chanceSd) + 100 * chanceSd * chanceSd, within(1e-9));
    }

    @Test
    void quantilesLeaveThatMuchBelow() {
        BetaBinomial next = new BetaBinomial(10, 1, 1);
        assertThat(next.quantile(0.025)).isZero();
        assertThat(next.quantile(0.5)).isEqualTo(5);
        assertThat(next.quantile(0.975)).isEqualTo(10);
    }
}
