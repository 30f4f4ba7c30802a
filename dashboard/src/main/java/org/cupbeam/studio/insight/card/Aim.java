package org.cupbeam.studio.insight.card;

import java.util.function.DoubleUnaryOperator;
import org.cupbeam.green.Capture;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.green.Hole;
import org.cupbeam.green.Motion;
import org.cupbeam.green.Plane;
import org.cupbeam.green.Reach;
import org.cupbeam.green.Rolling;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * How to set a ball off so that it passes over the hole's centre at some speed: rolling from the start, on a plane.
 *
 * @param distanceMm       putted from
 * @param besideMm         the point to aim at, beside the hole's centre; to the left positive
 * @param startMmPerS      speed at the start, already rolling
 * @param atHoleMmPerS     speed over the hole's centre
 * @param entryRad         how far the ball then comes from the side: its direction off the line, to the left positive
 * @param pastMm           how far past the hole it would stop without one
 * @param effectiveWidthMm how wide the hole is to it
 */
public record Aim(double distanceMm, double besideMm, double startMmPerS, double atHoleMmPerS, double entryRad,
                  double pastMm, double effectiveWidthMm) {
    private static final double EXACT = 1e-12;
    private static final int EVALUATIONS_MAX = 200;
    /** Progress back from the hole, beyond which no putt starts: the ball would come at e²⁰ times its speed. */
    private static final double FURTHEST_BACK = 20;

    /** Over the hole at this speed. */
    public static Aim atSpeed(Line line, double distanceMm, double atHoleMmPerS) {
        return new Solving(line, distanceMm, heading -> atHoleMmPerS).aim();
    }

    /** Over the hole so that it would stop so far past, along its own way; above 0. */
    public static Aim past(Line line, double distanceMm, double pastMm) {
        Plane plane = line.plane();
        return new Solving(line, distanceMm, heading -> {
            Reach reach = plane.stop(new Motion(1, heading));
            return Math.sqrt(pastMm / Math.hypot(reach.downMm(), reach.acrossMm()));
        }).aim();
    }

    /** The start's direction off the line, to the left positive. */
    public double launchRad() {
        return Math.atan(besideMm / distanceMm);
    }

    /** How far a ball set off so fast would roll on the level, in mm: how it must feel. */
    public double levelRollMm(double stimpFt) {
        return Rolling.stopDistanceMm(startMmPerS, GreenSpeed.levelDecelerationMmPerS2(stimpFt));
    }

    /** The share of the hole's width that the ball can use. */
    public double share() {
        return effectiveWidthMm / (2 * Hole.RADIUS_MM);
    }

    /**
     * The search, in the plane's own directions, for a line that leads to the side of positive headings; one to the other
     * side is its mirror image.
     */
    private record Solving(Line line, double distanceMm, DoubleUnaryOperator speedByHeading) {

        Aim aim() {
            Plane plane = line.plane();
            double lineRad = line.headingRad();
            boolean straight = lineRad < EXACT || Math.PI - lineRad < EXACT;
            double headingRad = straight ? lineRad : solved(0, Math.PI, heading -> bearingRad(plane, heading) - lineRad);
            Motion entry = entry(headingRad);
            Motion start = plane.after(entry, -wayBack(plane, entry));
            Reach stop = plane.stop(entry);
            // A ball that turns left starts to the right of the line and comes in to its left.
            double side = line.turnsLeft() ? -1 : 1;
            return new Aim(distanceMm, side * distanceMm * Math.tan(start.headingRad() - lineRad), start.speedMmPerS(),
                    entry.speedMmPerS(), side * (headingRad - lineRad), Math.hypot(stop.downMm(), stop.acrossMm()),
                    Capture.effectiveWidthMm(entry.speedMmPerS()
                            / Capture.slopeFactor(line.fallPercent(), Math.PI - headingRad)));
        }

        private Motion entry(double headingRad) {
            return new Motion(speedByHeading.applyAsDouble(headingRad), headingRad);
        }

        /** The direction of the line from where a ball with this heading at the hole must have come from. */
        private double bearingRad(Plane plane, double headingRad) {
            Motion entry = entry(headingRad);
            Reach back = plane.reach(entry, -wayBack(plane, entry));
            return Math.atan2(-back.acrossMm(), -back.downMm());
        }

        private double wayBack(Plane plane, Motion entry) {
            return solved(0, FURTHEST_BACK, progress -> {
                Reach back = plane.reach(entry, -progress);
                return Math.hypot(back.downMm(), back.acrossMm()) - distanceMm;
            });
        }

        private static double solved(double low, double high, DoubleUnaryOperator zero) {
            return new BracketingNthOrderBrentSolver(EXACT, EXACT, 5)
                    .solve(EVALUATIONS_MAX, zero::applyAsDouble, low, high);
        }
    }
}
