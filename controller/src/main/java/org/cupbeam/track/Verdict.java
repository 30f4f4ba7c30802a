package org.cupbeam.track;

import org.apache.commons.statistics.distribution.TruncatedNormalDistribution;
import org.cupbeam.green.Hole;
import org.cupbeam.track.Attempt.Outcome;

/** What is said of a ball once nothing can change it. */
final class Verdict {
    /** A finish further than this many standard deviations outside its bounds is not this free roll's. */
    private static final double CONFLICT_SDS = 4.5;
    private static final double CONFLICT_MM = 4;
    /** Two-sided 95 % of a normal distribution. */
    private static final double Z95 = 1.959964;
    private static final double NONE = Double.NaN;

    private final Lay lay;
    private final LaneBelief lane;
    private final FinishEstimator estimator;
    private double finishMm;
    private double finishSdMm;
    private double lowMm;
    private double highMm;

    Verdict(Lay lay, LaneBelief lane) {
        this.lay = lay;
        this.lane = lane;
        estimator = new FinishEstimator(lay);
    }

    Attempt holed(Ball ball, long resolvedNs) {
        estimateApproach(ball);
        double pace = finite(estimator.finishMm());
        double speed = estimator.speedAtMmPerS(0);
        teach(ball);
        return new Attempt(ball.firstNs(), resolvedNs, Outcome.HOLED, NONE, NONE, NONE, NONE, speed, pace, false);
    }

    /** A drop of which nothing else is known. */
    static Attempt holedUnseen(long firstNs, long resolvedNs) {
        return new Attempt(firstNs, resolvedNs, Outcome.HOLED, NONE, NONE, NONE, NONE, NONE, NONE, false);
    }

    /** A miss of which nothing is known but that it came no further. */
    static Attempt missedUnseen(long firstNs, long resolvedNs, double beforeMm) {
        return new Attempt(firstNs, resolvedNs, Outcome.MISSED, NONE, NONE, NONE, beforeMm, NONE, NONE, false);
    }

    /** A ball that stopped in the very first beam: anywhere in it, equally likely. */
    static Attempt missedIn(long firstNs, long resolvedNs, double centreMm, double halfMm) {
        return new Attempt(firstNs, resolvedNs, Outcome.MISSED, centreMm, halfMm / Math.sqrt(3),
                centreMm - 0.95 * halfMm, centreMm + 0.95 * halfMm, NONE, centreMm, false);
    }

    /**
     * A ball that came to rest.
     *
     * @param shortOfMm the place that it is known not to have passed; infinite if none
     */
    Attempt missed(Ball ball, long resolvedNs, double shortOfMm) {
        estimateApproach(ball);
        double pace = estimator.finishMm();
        double speedAtHole = estimator.speedAtMmPerS(0);
        boolean slowed = ball.isSlowed();
        if (slowed) {
            teach(ball);
            estimator.estimateDeflected(ball.crossings(), ball.lastStretchFrom(), ball.crossings().count(),
                    ball.current(), lane);
        }
        finishMm = estimator.finishMm();
        finishSdMm = estimator.finishSdMm();
        bound(ball, shortOfMm);
        boolean conflict = Double.isInfinite(finishMm)
                || finishMm - CONFLICT_SDS * finishSdMm - CONFLICT_MM > highMm
                || finishMm + CONFLICT_SDS * finishSdMm + CONFLICT_MM < lowMm;
        boolean touched = slowed || conflict && reachesHole(ball, pace);
        if (conflict) {
            if (ball.hasPassedHole()) {
                highMm = Double.POSITIVE_INFINITY; // no rim stops a ball here: the beam ahead did not see it pass
            }
            return new Attempt(ball.firstNs(), resolvedNs, Outcome.MISSED, NONE, NONE, finite(lowMm), finite(highMm),
                    speedAtHole, finite(pace), touched);
        }
        if (!slowed) {
            teach(ball);
        }
        double low = finishMm - Z95 * finishSdMm;
        double high = finishMm + Z95 * finishSdMm;
        if (low < lowMm || high > highMm) {
            TruncatedNormalDistribution cut =
                    TruncatedNormalDistribution.of(finishMm, finishSdMm, lowMm, highMm);
            finishMm = cut.getMean();
            finishSdMm = Math.sqrt(cut.getVariance());
            low = cut.inverseCumulativeProbability(0.025);
            high = cut.inverseCumulativeProbability(0.975);
        }
        return new Attempt(ball.firstNs(), resolvedNs, Outcome.MISSED, finishMm, finishSdMm, low, high, speedAtHole,
                slowed ? finite(pace) : finishMm, touched);
    }

    /** Parts what lies before and behind the hole where it does not fit one free roll: the ball touched the rim. */
    void partIfTouched(Ball ball) {
        if (ball.mayPart()) {
            estimateApproach(ball);
            if (!estimator.fits()) {
                ball.part(lane);
            }
        }
    }

    private void estimateApproach(Ball ball) {
        estimator.estimate(ball.crossings(), 0, ball.approachCount(), ball.approach(), lane);
    }

    private void teach(Ball ball) {
        Crossings crossings = ball.crossings();
        if (ball.approachCount() > 1 && !Double.isNaN(crossings.offS(1))) {
            estimator.teach(lane);
        }
    }

    private void bound(Ball ball, double shortOfMm) {
        Crossings crossings = ball.crossings();
        int last = crossings.count() - 1;
        int beam = crossings.beam(last);
        double offset = lane.mean[LaneBelief.offset(beam)];
        boolean stoppedInIt = Double.isNaN(crossings.offS(last));
        lowMm = offset + (stoppedInIt ? lay.arrivalMm(beam) : lay.departureMm(beam));
        highMm = stoppedInIt ? offset + lay.departureMm(beam) : shortOfMm;
        if (highMm <= lowMm) {
            highMm = Double.POSITIVE_INFINITY;
        }
    }

    private boolean reachesHole(Ball ball, double paceMm) {
        return !ball.hasPassedHole() && paceMm > -Hole.RADIUS_MM;
    }

    private static double finite(double value) {
        return Double.isInfinite(value) ? NONE : value;
    }
}
