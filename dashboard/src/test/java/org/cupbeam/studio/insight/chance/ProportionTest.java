package org.cupbeam.studio.insight.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProportionTest {
    /**
     * Computed independently (SciPy), six decimals. The first four counts are the examples of R. G. Newcombe, Statistics in
     * Medicine 17, 857 (1998), 7 of 50 is in SciPy's documentation, 23 of 60 on VassarStats' page.
     */
    @ParameterizedTest
    @CsvSource({"81,263,0.255289,0.366210,0.254522,0.365647", "15,148,0.062386,0.160487,0.060449,0.157643",
            "0,20,0,0.161125,0,0.116639", "1,29,0.006113,0.171755,0.003746,0.150078",
            "7,50,0.069508,0.261862,0.064872,0.255325", "23,60,0.270883,0.509824,0.268146,0.509476",
            "7,10,0.396778,0.892209,0.394182,0.907305", "10,10,0.722467,1,0.782804,1",
            "96,100,0.901629,0.984337,0.907710,0.986350"})
    void intervalsAreTheKnownOnes(int made, int tries, double wilsonLow, double wilsonHigh, double jeffreysLow,
                                  double jeffreysHigh) {
        Proportion share = new Proportion(made, tries);
        assertThat(share.wilson().low()).isCloseTo(wilsonLow, within(6e-7));
        assertThat(share.wilson().high()).isCloseTo(wilsonHigh, within(6e-7));
        assertThat(share.jeffreys().low()).isCloseTo(jeffreysLow, within(6e-7));
        assertThat(share.jeffreys().high()).isCloseTo(jeffreysHigh, within(6e-7));
    }

    /** Newcombe 1998, Wilson's limits as published; four decimals, from memory. */
    @ParameterizedTest
    @CsvSource({"81,263,0.2553,0.3662", "15,148,0.0624,0.1605", "0,20,0,0.1611", "1,29,0.0061,0.1718"})
    void wilsonsLimitsAreThePublishedOnes(int made, int tries, double low, double high) {
        Estimate share = new Proportion(made, tries).wilson();
        assertThat(share.low()).isCloseTo(low, within(6e-5));
        assertThat(share.high()).isCloseTo(high, within(6e-5));
    }

    @Test
    void intervalsHoldTheTruthAsOftenAsTheySay() {
        SplittableRandom random = new SplittableRandom(5);
        int held = 0;
        int all = 20_000;
        for (int i = 0; i < all; i++) {
            double chance = random.nextDouble(0.05, 0.95);
            int made = 0;
            for (int putt = 0; putt < 25; putt++) {
                made += random.nextDouble() < chance ? 1 : 0;
            }
            held += new Proportion(made, 25).wilson().holds(chance) ? 1 : 0;
        }
        System.out.printf("Wilson, 25 tries, seed 5: %.4f of %d intervals hold the truth%n", (double) held / all, all);
        assertThat((double) held / all).isBetween(0.94, 0.965);
    }

    @Test
    void withoutATryAnythingMayBe() {
        assertThat(new Proportion(0, 0).wilson()).isEqualTo(new Estimate(0.5, 0, 1));
        assertThat(new Proportion(0, 0).inWords()).isEqualTo("no putts yet");
    }

    @Test
    void itIsSaidInWords() {
        assertThat(new Proportion(23, 60).inWords()).isEqualTo("23 of 60, 38 in 100 (27 to 51)");
    }

    @Test
    void moreMadeThanTriedIsRefused() {
        assertThatThrownBy(() -> new Proportion(4, 3)).hasMessageContaining("4 of 3");
    }
}
