package org.cupbeam.studio.insight.make;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.cupbeam.studio.insight.shot.Golfer;
import org.cupbeam.studio.insight.shot.Shot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StrokeFitTest {
    @ParameterizedTest
    @CsvSource({"1.0,300,0.065,0.004", "1.5,250,0.10,0.015", "2.4,200,0.16,0.03", "0.8,500,0.12,0.05"})
    void findsTheStrokeBehindManyPutts(double degrees, double aimMm, double paceSd, double mishit) {
        StrokeFit fit = Fitting.measured(
                Fitting.ladder(new Golfer(degrees, aimMm, paceSd, mishit), new Random(7), 40_000));
        assertThat(fit.direction().degrees().value()).isCloseTo(degrees, within(0.03 * degrees));
        assertThat(fit.pace().aimPastMm()).isCloseTo(aimMm, within(12.0));
        assertThat(fit.pace().paceSd()).isCloseTo(paceSd, within(0.04 * paceSd));
        assertThat(fit.pace().mishitShare()).isCloseTo(mishit, within(0.6 * mishit));
    }

    /** The make rate that follows from the stroke is the one that putting gives. */
    @ParameterizedTest
    @CsvSource({"914.4", "2743.2", "5486.4", "9144"})
    void theStrokesMakeRateIsThatOfItsPutts(double distanceMm) {
        for (Golfer golfer : List.of(Golfer.tour(), Golfer.club(), Golfer.beginner())) {
            double rate = golfer.makeRate(new Random(3), distanceMm, 60_000);
            Stroke stroke = new Stroke(Math.toRadians(golfer.directionSdDeg()), golfer.aimPastMm(), golfer.paceSd(),
                    golfer.mishitShare(), Golfer.DECELERATION);
            assertThat(stroke.at(distanceMm)).isCloseTo(rate, within(0.012));
        }
    }

    @ParameterizedTest
    @CsvSource({"2743.2,914.4", "5486.4,914.4", "5486.4,267", "914.4,267"})
    void overshootsComeAsOftenAsTheStrokeSays(double distanceMm, double limitMm) {
        for (Golfer golfer : List.of(Golfer.tour(), Golfer.club(), Golfer.beginner())) {
            Random random = new Random(4);
            int over = 0;
            for (int i = 0; i < 40_000; i++) {
                Shot shot = golfer.putt(random, 0, 0, distanceMm);
                over += !shot.holed() && shot.paceMm() > limitMm ? 1 : 0;
            }
            Stroke stroke = new Stroke(Math.toRadians(golfer.directionSdDeg()), golfer.aimPastMm(), golfer.paceSd(),
                    golfer.mishitShare(), Golfer.DECELERATION);
            assertThat(stroke.overshot(distanceMm, limitMm)).isCloseTo(over / 40_000.0, within(0.012));
        }
    }

    /** Ten putts, all made or all missed, move what is held likely; they do not replace it. */
    @Test
    void tenPuttsMakeNoFoolOfIt() {
        List<Tries> allMade = List.of(new Tries(3048, 10, 10));
        List<Tries> noneMade = List.of(new Tries(1524, 10, 0));
        CurveFit lucky = CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, allMade);
        CurveFit unlucky = CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, noneMade);
        assertThat(lucky.curve().at(3048)).isBetween(0.3, 0.85);
        assertThat(lucky.curve().at(9144)).isLessThan(0.3);
        assertThat(unlucky.curve().at(1524)).isBetween(0.1, 0.5);
        assertThat(lucky.at(3048).width()).isGreaterThan(0.2);
        CurveFit oneAngle = CurveFit.of(Shape.ONE_ANGLE, Prior.ONE_ANGLE, allMade);
        assertThat(oneAngle.curve().at(3048)).isBetween(0.2, 0.7);
    }

    @Test
    void nothingKnownIsAnOrdinaryPlayerWithWideIntervals() {
        CurveFit fit = CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, List.of());
        assertThat(fit.at(2438.4).low()).isLessThan(0.25);
        assertThat(fit.at(2438.4).high()).isGreaterThan(0.5);
        StrokeFit stroke = Fitting.measured(List.of());
        assertThat(stroke.at(2438.4).width()).isGreaterThan(0.25);
    }

    /** What measuring gains over makes alone: errors and intervals of the make rate, over players and putts. */
    @Test
    void measuredRollsTellMoreThanMakesAlone() {
        Random random = new Random(20);
        double[] errors = new double[2];
        double[] widths = new double[2];
        int[] held = new int[2];
        double[] logSds = new double[4];
        int all = 0;
        for (int player = 0; player < 150; player++) {
            Golfer golfer = new Golfer(1.4 * Math.exp(0.25 * random.nextGaussian()), 300 + 80 * random.nextGaussian(),
                    0.09 * Math.exp(0.25 * random.nextGaussian()), 0.01);
            Stroke truth = new Stroke(Math.toRadians(golfer.directionSdDeg()), golfer.aimPastMm(), golfer.paceSd(),
                    golfer.mishitShare(), Golfer.DECELERATION);
            List<Shot> shots = Fitting.ladder(golfer, random, 240);
            CurveFit makes = Fitting.makesAlone(shots);
            StrokeFit measured = Fitting.measured(shots);
            Skill[] fits = {makes, measured};
            double[] known = {makes.summit().sd(0), measured.direction().logSd(), makes.summit().sd(1),
                    measured.pace().logSd()};
            for (int i = 0; i < known.length; i++) {
                logSds[i] += 100 * known[i] / 150;
            }
            for (int station = 1; station <= 8; station++) {
                double distanceMm = 914.4 * station;
                all++;
                for (int which = 0; which < 2; which++) {
                    double off = fits[which].curve().at(distanceMm) - truth.at(distanceMm);
                    errors[which] += off * off;
                    widths[which] += fits[which].at(distanceMm).width();
                    held[which] += fits[which].at(distanceMm).holds(truth.at(distanceMm)) ? 1 : 0;
                }
            }
        }
        System.out.printf("240 putts, 150 players, seed 20: root mean square error of the make rate %.4f from makes, "
                        + "%.4f measured (worth %.2f times the putts); 95 %% intervals %.3f and %.3f wide, hold the truth "
                        + "%.3f and %.3f%n", Math.sqrt(errors[0] / all), Math.sqrt(errors[1] / all),
                errors[0] / errors[1], widths[0] / all, widths[1] / all, (double) held[0] / all, (double) held[1] / all);
        System.out.printf("  what is known of direction, standard deviation in %%: %.1f from makes, %.1f measured; of pace: "
                + "%.1f from makes, %.1f measured (worth %.0f times the putts)%n", logSds[0], logSds[1], logSds[2], logSds[3],
                Math.pow(logSds[2] / logSds[3], 2));
        assertThat(errors[1]).isLessThan(errors[0]);
        assertThat(logSds[3]).isLessThan(logSds[2] / 2);
        assertThat((double) held[1] / all).isBetween(0.91, 0.99);
        assertThat((double) held[0] / all).isBetween(0.90, 0.99);
    }
}
