package org.cupbeam.green;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlopeTest {
    /** Computed independently (SciPy), v0 = 1.8288 m/s, g = 9.80665 m/s², a rolling sphere; percent, two decimals. */
    @ParameterizedTest
    @CsvSource({"4,19.58", "6,13.05", "8,9.79", "9,8.70", "10,7.83", "11,7.12", "12,6.53", "13,6.02", "14,5.59"})
    void fasterGreensRunAwayOnGentlerSlopes(double stimpFt, double percent) {
        double runaway = Slope.runawayPercent(stimpFt);
        assertThat(runaway).isCloseTo(percent, within(0.0055));
        assertThat(GreenSpeed.decelerationMmPerS2(stimpFt, -runaway)).isCloseTo(0, within(1e-9));
    }

    @Test
    void uphillSlowsAndDownhillSpeeds() {
        assertThat(Slope.pullMmPerS2(2)).isPositive().isEqualTo(-Slope.pullMmPerS2(-2));
        assertThat(Slope.pullMmPerS2(0)).isZero();
    }
}
