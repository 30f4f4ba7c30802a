package org.cupbeam.studio.insight.make;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.cupbeam.studio.insight.words.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The published tables, fitted anew. Published figures: A. Gelman, Model building and expansion for golf putting (Stan case
 * study, 24 Sep 2019). The case study's ball and hole have radii of 0.84 and 2.125 inches, so these checks use them.
 */
class PublishedFitsTest {
    private static final double ROOM_MM = (2.125 - 0.84) * Units.MM_PER_IN;

    /** Binomial likelihood, no prior. Published 1.53 (0.02) degrees; SciPy 1.52667, standard error 0.0227. */
    @Test
    void oneAngleFitsBerrysTableAsPublished() {
        CurveFit fit = CurveFit.of(Shape.oneAngle(ROOM_MM), Prior.none(Math.toRadians(1)), PublishedTables.berry());
        double degrees = Math.toDegrees(fit.parameter(0).value());
        assertThat(degrees).isCloseTo(1.53, within(0.02)).isCloseTo(1.52667, within(6e-6));
        assertThat(fit.summit().sd(0) * degrees).isCloseTo(0.0227, within(6e-5));
    }

    /** Computed independently (SciPy), five decimals, at the fitted 1.52667 degrees. */
    @ParameterizedTest
    @CsvSource({"2,0.95561", "3,0.81972", "5,0.57850", "10,0.31224", "15,0.21124", "20,0.15926"})
    void oneAngleGivesTheKnownChances(double ft, double chance) {
        assertThat(new OneAngle(0.0266454, ROOM_MM).at(ft * Units.MM_PER_FT)).isCloseTo(chance, within(6e-6));
    }

    /** SciPy: log likelihood -83.4459 for one angle, and -180.961133 for a straight line in the log odds. */
    @Test
    void oneAngleExplainsBerrysTableBetterThanALogisticLine() {
        List<Tries> berry = PublishedTables.berry();
        double line = logLikelihood(berry, mm -> 1 / (1 + Math.exp(-2.231211 + 0.255692 * mm / Units.MM_PER_FT)));
        double angle = logLikelihood(berry, new OneAngle(0.0266454, ROOM_MM));
        assertThat(line).isCloseTo(-180.961133, within(1e-5));
        assertThat(angle).isCloseTo(-83.4459, within(1e-3));
    }

    /**
     * Normal errors about the share made, with an error beyond counting. Published 1.020 (0.006) degrees, 0.080 (0.001),
     * 0.003 (0.001); SciPy's mode 1.01998 degrees, 0.080066, 0.002774, largest residual 0.00786.
     */
    @Test
    void angleAndDistanceFitBroadiesTableAsPublished() {
        List<Tries> broadie = PublishedTables.broadie();
        CurveFit fit = CurveFit.ofTable(Shape.angleAndDistance(ROOM_MM), broadie, Math.toRadians(1.5), 0.1);
        double degrees = Math.toDegrees(fit.parameter(0).value());
        assertThat(degrees).isCloseTo(1.020, within(0.006)).isCloseTo(1.01998, within(6e-5));
        assertThat(fit.parameter(1).value()).isCloseTo(0.080, within(0.001)).isCloseTo(0.080066, within(2e-6));
        assertThat(fit.parameter(2).value()).isCloseTo(0.003, within(0.001)).isCloseTo(0.002774, within(2e-6));
        double worst = broadie.stream().mapToDouble(row ->
                Math.abs(row.proportion().share() - fit.curve().at(row.distanceMm()))).max().orElseThrow();
        assertThat(worst).isCloseTo(0.00786, within(1e-5));
    }

    /** SciPy: each putt for itself, the likelihood of Broadie's table has several optima; the best does not fit it. */
    @Test
    void eachPuttForItselfBroadiesTableHasNoOneAnswer() {
        List<Tries> broadie = PublishedTables.broadie();
        Shape shape = Shape.angleAndDistance(ROOM_MM);
        CurveFit published = CurveFit.of(shape, Prior.none(0.0178, 0.080), broadie);
        CurveFit other = CurveFit.of(shape, Prior.none(0.0133, 0.137), broadie);
        assertThat(other.summit().logDensity()).isGreaterThan(published.summit().logDensity() + 100);
        assertThat(other.parameter(0).value()).isCloseTo(0.0133, within(1e-4));
        assertThat(other.parameter(1).value()).isCloseTo(0.1372, within(1e-4));
    }

    /** Computed independently (SciPy), five decimals. */
    @ParameterizedTest
    @CsvSource({"2,0.99736", "3,0.95424", "5,0.75671", "8,0.50123", "10,0.38942", "15,0.22546", "20,0.14355",
            "30,0.07097", "40,0.04169", "60,0.01918"})
    void angleAndDistanceGiveTheKnownChances(double ft, double chance) {
        AngleAndDistance curve = new AngleAndDistance(Math.toRadians(1.020), 0.080, ROOM_MM);
        assertThat(curve.at(ft * Units.MM_PER_FT)).isCloseTo(chance, within(6e-6));
    }

    /** With the ways in which so many of so many can be made, as SciPy counts it. */
    private static double logLikelihood(List<Tries> rows, MakeCurve curve) {
        double ways = rows.stream().mapToDouble(row -> logWays(row.tries(), row.made())).sum();
        return ways + CurveFit.logLikelihood(Likelihood.BINOMIAL, rows, curve, 0);
    }

    private static double logWays(int tries, int made) {
        double log = 0;
        for (int i = 1; i <= made; i++) {
            log += Math.log((double) (tries - made + i) / i);
        }
        return log;
    }
}
