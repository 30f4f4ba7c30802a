package org.cupbeam.studio.insight.surface;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TDistribution;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.words.Words;

/**
 * What the rolls of a test say of the green so far, and which are still to be rolled.
 *
 * @param toward    balls rolled as putts go
 * @param back      balls rolled back
 * @param slowed    each ball's deceleration, mm/s², in the order of the rolls
 * @param test      the speed and the slope, once there are three balls each way
 * @param scatterFt how much single balls differ, standard deviation in ft; 0 before that
 * @param sharedFt  what stays uncertain however many roll, standard deviation in ft; 0 before that
 */
public record RollReading(int toward, int back, List<Double> slowed, Optional<RollTest> test, double scatterFt,
                          double sharedFt) {
    /** Known so well, to either side, it is known well enough. */
    public static final double GOAL_FT = 0.25;
    private static final int MORE_MAX = 6;

    public RollReading {
        slowed = List.copyOf(slowed);
    }

    /** From rolls through all of two beams or more. */
    public static RollReading of(Rolled rolled) {
        if (rolled.balls().isEmpty()) {
            return new RollReading(0, 0, List.of(), Optional.empty(), 0, 0);
        }
        RollFit fit = new RollFit(rolled);
        List<Double> toward = fit.decelerations(true);
        List<Double> back = fit.decelerations(false);
        List<Double> all = IntStream.range(0, rolled.balls().size()).mapToObj(fit::decelerationMmPerS2).toList();
        boolean enough = toward.size() >= RollTest.BALLS_MIN && back.size() >= RollTest.BALLS_MIN
                && all.stream().allMatch(each -> each > 0);
        if (!enough) {
            return new RollReading(toward.size(), back.size(), all, Optional.empty(), 0, 0);
        }
        double levelSd = fit.sharedSd(weights(rolled, toward.size(), back.size(), 1));
        double pullSd = fit.sharedSd(weights(rolled, toward.size(), back.size(), -1));
        RollTest test = RollTest.of(toward, back, levelSd, pullSd).orElseThrow();
        double level = (mean(toward) + mean(back)) / 2;
        double stimp = test.stimpFt().value();
        return new RollReading(toward.size(), back.size(), all, Optional.of(test), stimp * spread(toward, back) / level,
                stimp * levelSd / level);
    }

    /** Balls still to be rolled this way before anything can be said; 0 once there are enough. */
    public int missing(boolean towardHole) {
        return Math.max(0, RollTest.BALLS_MIN - (towardHole ? toward : back));
    }

    /** How many more each way would make it known well enough; 0 where it is, empty where no reasonable number would. */
    public Optional<Integer> more() {
        if (test.isEmpty()) {
            return Optional.of(Math.max(missing(true), missing(false)));
        }
        if (test.get().stimpFt().width() / 2 <= GOAL_FT) {
            return Optional.of(0);
        }
        for (int k = 1; k <= MORE_MAX; k++) {
            if (halfWidthFt(k) <= GOAL_FT) {
                return Optional.of(k);
            }
        }
        return Optional.empty();
    }

    /** What more rolls would do, as a sentence. */
    public String moreInWords() {
        return more().map(more -> more == 0 ? "That is known well enough: more balls would change little."
                : "About " + Words.count(more, "more ball") + " each way would make it sure to "
                + Words.decimal(GOAL_FT, 2) + " ft.").orElse(sharedFt * Estimate.SDS > GOAL_FT
                ? "More balls would not make it much surer: what is left is how well the beams tell how a ball slows."
                : "Single balls differ too much to be sure to " + Words.decimal(GOAL_FT, 2)
                + " ft: roll them on one line, beside the hole, well past the last beam.");
    }

    private double halfWidthFt(int moreEachWay) {
        double up = toward + moreEachWay;
        double down = back + moreEachWay;
        double t = TDistribution.of(up + down - 2).inverseSurvivalProbability((1 - Estimate.LEVEL) / 2);
        return Math.hypot(t * scatterFt * Math.sqrt(1 / up + 1 / down) / 2, Estimate.SDS * sharedFt);
    }

    private static double[] weights(Rolled rolled, int toward, int back, int sign) {
        return rolled.balls().stream().mapToDouble(each -> each.toward() ? 0.5 / toward : sign * 0.5 / back)
                .toArray();
    }

    private static double spread(List<Double> toward, List<Double> back) {
        return Math.sqrt((squares(toward) + squares(back)) / (toward.size() + back.size() - 2));
    }

    private static double squares(List<Double> values) {
        double mean = mean(values);
        return values.stream().mapToDouble(each -> (each - mean) * (each - mean)).sum();
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }
}
