package org.cupbeam.studio.insight.surface;

import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.green.Slope;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.words.Words;

/**
 * A test of the green by rolling balls through the beams, some toward the hole and some back: what a Stimpmeter does, but
 * for the device, since a ball's deceleration does not depend on how it was sent off.
 *
 * @param stimpFt       the speed as on a level green: A. D. Brede's harmonic mean of both ways (1990)
 * @param uphillPercent the line's slope toward the hole, as the two ways have it
 * @param together      whether the balls of each way lie within 8 in of each other, as the USGA's booklet asks of three
 * @param level         whether both ways agree to 18 in, within which that booklet takes a plain mean
 */
public record RollTest(Estimate stimpFt, Estimate uphillPercent, boolean together, boolean level) {
    /** Balls to roll each way. */
    public static final int BALLS_MIN = 3;
    private static final double TOGETHER_FT = 8 / 12.0;
    private static final double LEVEL_FT = 1.5;

    /**
     * From decelerations in mm/s²; empty with fewer than three each way.
     *
     * @param toward of balls rolled along the line toward the hole
     * @param back   of balls rolled the other way
     */
    public static Optional<RollTest> of(List<Double> toward, List<Double> back) {
        return of(toward, back, 0, 0);
    }

    /**
     * The same, where the measuring of all balls has an error in common, which their scatter does not show.
     *
     * @param levelSd of half the sum of both ways' mean decelerations, standard deviation in mm/s²
     * @param pullSd  of half their difference, likewise
     */
    static Optional<RollTest> of(List<Double> toward, List<Double> back, double levelSd, double pullSd) {
        if (toward.size() < BALLS_MIN || back.size() < BALLS_MIN) {
            return Optional.empty();
        }
        Way up = Way.of(toward);
        Way down = Way.of(back);
        double freedom = toward.size() + back.size() - 2.0;
        double widths = TDistribution.of(freedom).inverseSurvivalProbability((1 - Estimate.LEVEL) / 2) / Estimate.SDS;
        double stimp = GreenSpeed.levelStimpFt(up.meanFt, down.meanFt);
        double sum = up.meanFt + down.meanFt;
        double sd = 2 * Math.hypot(down.meanFt * down.meanFt * up.errorFt, up.meanFt * up.meanFt * down.errorFt)
                / (sum * sum);
        double shared = stimp * levelSd * 2 / (up.meanMmPerS2 + down.meanMmPerS2);
        double pull = (up.meanMmPerS2 - down.meanMmPerS2) / 2;
        double perPercent = Slope.pullMmPerS2(1);
        return Optional.of(new RollTest(Estimate.normal(stimp, Math.hypot(widths * sd, shared)),
                Estimate.normal(pull / perPercent, Math.hypot(
                        widths * Math.hypot(up.errorMmPerS2, down.errorMmPerS2) / 2, pullSd) / perPercent),
                up.spreadFt < TOGETHER_FT && down.spreadFt < TOGETHER_FT, Math.abs(up.meanFt - down.meanFt) < LEVEL_FT));
    }

    /** As a sentence. */
    public String inWords() {
        return "The green runs " + Words.decimal(stimpFt.value(), 1) + " ft (" + Words.decimal(stimpFt.low(), 1) + " to "
                + Words.decimal(stimpFt.high(), 1) + "), the line " + (level ? "is near enough level"
                : (uphillPercent.value() > 0 ? "rises " : "falls ") + Words.decimal(Math.abs(uphillPercent.value()), 1) + " %")
                + (together ? "." : "; but the balls of one way lie more than 8 in apart: roll more of them.");
    }

    /** The balls of one way, and what each would read on a Stimpmeter's run. */
    private record Way(double meanFt, double errorFt, double spreadFt, double meanMmPerS2, double errorMmPerS2) {

        static Way of(List<Double> decelerations) {
            double[] feet = decelerations.stream().mapToDouble(each -> GreenSpeed.stimpFt(each, 0)).toArray();
            double[] mm = decelerations.stream().mapToDouble(Double::doubleValue).toArray();
            double least = Double.POSITIVE_INFINITY;
            double most = 0;
            for (double each : feet) {
                least = Math.min(least, each);
                most = Math.max(most, each);
            }
            return new Way(mean(feet), error(feet), most - least, mean(mm), error(mm));
        }

        private static double mean(double[] values) {
            double sum = 0;
            for (double each : values) {
                sum += each;
            }
            return sum / values.length;
        }

        /** Standard error of the mean. */
        private static double error(double[] values) {
            double squares = 0;
            for (double each : values) {
                squares += (each - mean(values)) * (each - mean(values));
            }
            return Math.sqrt(squares / (values.length - 1) / values.length);
        }
    }
}
