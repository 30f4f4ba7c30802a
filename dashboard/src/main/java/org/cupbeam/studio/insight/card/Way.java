package org.cupbeam.studio.insight.card;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.green.Motion;
import org.cupbeam.green.Plane;
import org.cupbeam.green.Reach;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * The way that a ball takes which is set off as an aim says: to the hole, and on, had there been none.
 *
 * @param toHole  places from the ball to the hole's centre
 * @param past    places from there to where the ball would come to rest
 * @param toHoleS time from the start to the hole's centre, rolling from the start
 * @param toRestS time from the start until it would lie still
 */
public record Way(List<Place> toHole, List<Place> past, double toHoleS, double toRestS) {
    private static final double EXACT = 1e-10;
    private static final int EVALUATIONS_MAX = 200;
    private static final double FURTHEST = 20;
    /** By so much progress past the hole a ball has all but stopped: e⁻⁴ of its speed is left. */
    private static final double ALL_BUT_STOPPED = 4;

    /**
     * A place on the green.
     *
     * @param alongMm from the hole's centre along the line, before the hole negative
     * @param leftMm  to the left of the line
     */
    public record Place(double alongMm, double leftMm) {
    }

    public Way {
        toHole = List.copyOf(toHole);
        past = List.copyOf(past);
    }

    /** @param pieces how many each part is drawn with, 1 or more */
    public static Way of(Line line, Aim aim, int pieces) {
        return new Rolling(line, aim).way(pieces);
    }

    /** Everything in the plane's own directions, then seen from the line. */
    private record Rolling(Line line, Aim aim) {

        Way way(int pieces) {
            Plane plane = line.plane();
            Motion start = new Motion(aim.startMmPerS(), line.headingRad() + side() * aim.launchRad());
            double atHole = new BracketingNthOrderBrentSolver(EXACT, EXACT, 5).solve(EVALUATIONS_MAX,
                    progress -> far(plane.reach(start, progress)) - aim.distanceMm(), 0, FURTHEST);
            List<Place> toHole = new ArrayList<>();
            List<Place> past = new ArrayList<>();
            for (int i = 0; i <= pieces; i++) {
                toHole.add(seen(plane.reach(start, atHole * i / pieces)));
                past.add(seen(i == pieces ? plane.stop(start)
                        : plane.reach(start, atHole + ALL_BUT_STOPPED * i / pieces)));
            }
            double rest = plane.stopTimeS(start);
            return new Way(toHole, past, rest - plane.stopTimeS(plane.after(start, atHole)), rest);
        }

        /** A ball that turns left starts to the right of the line; its headings are counted the other way round. */
        private double side() {
            return line.turnsLeft() ? -1 : 1;
        }

        private Place seen(Reach reach) {
            double cos = Math.cos(line.headingRad());
            double sin = Math.sin(line.headingRad());
            return new Place(reach.downMm() * cos + reach.acrossMm() * sin - aim.distanceMm(),
                    side() * (reach.acrossMm() * cos - reach.downMm() * sin));
        }

        private static double far(Reach reach) {
            return Math.hypot(reach.downMm(), reach.acrossMm());
        }
    }
}
