package org.cupbeam.studio.insight.plot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Tallies;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.turn.Turns;
import org.cupbeam.studio.insight.weak.Weaknesses;

/**
 * Session by session, how many putts dropped against how many of the same putts would as the player putts now.
 *
 * @param points   in order
 * @param together how many sessions make one point
 */
public record Timeline(List<Point> points, int together) {
    /** As many as a page can show side by side. */
    public static final int POINTS_MAX = 120;

    /**
     * Some sessions.
     *
     * @param session    the first of them, from 0
     * @param atMs       when it began
     * @param expected   to drop, as the player putts now
     * @param perHundred how many more than that dropped of 100; the interval is what chance may do
     * @param turned     by the Bayesian view, the chance that a turn lies here
     */
    public record Point(int session, long atMs, int putts, int made, double expected, Estimate perHundred, double turned) {
    }

    public Timeline {
        points = List.copyOf(points);
    }

    /** Of a player whose make rate now is this curve, moved by what is known of kinds of putts. */
    public static Timeline of(Sessions sessions, MakeCurve curve, Weaknesses weaknesses, Turns turns) {
        int together = Math.max(1, (sessions.count() + POINTS_MAX - 1) / POINTS_MAX);
        Chances chances = new Chances(curve, weaknesses);
        List<Point> points = new ArrayList<>();
        for (int from = 0; from < sessions.count(); from += together) {
            int to = Math.min(sessions.count(), from + together);
            points.add(point(sessions, from, to, chances, Arrays.stream(turns.stretches().turned(), from, to).sum()));
        }
        return new Timeline(points, together);
    }

    private static Point point(Sessions sessions, int from, int to, Chances chances, double turned) {
        int made = 0;
        double expected = 0;
        double variance = 0;
        for (int i = sessions.starts()[from]; i < sessions.starts()[to]; i++) {
            Shot shot = sessions.shots().get(i);
            double chance = chances.of(shot);
            made += shot.holed() ? 1 : 0;
            expected += chance;
            variance += chance * (1 - chance);
        }
        int putts = sessions.starts()[to] - sessions.starts()[from];
        return new Point(from, sessions.atMs(from), putts, made, expected,
                Estimate.normal(made - expected, Math.sqrt(variance)).times(100.0 / putts), Math.min(1, turned));
    }

    /** Chances of putts, each place and kind worked out once. */
    private static final class Chances {
        private final MakeCurve curve;
        private final Weaknesses weaknesses;
        private final double[] known = new double[Tallies.cells()];

        Chances(MakeCurve curve, Weaknesses weaknesses) {
            this.curve = curve;
            this.weaknesses = weaknesses;
            Arrays.fill(known, Double.NaN);
        }

        double of(Shot shot) {
            int cell = Tallies.cell(shot);
            if (Double.isNaN(known[cell])) {
                known[cell] = LogOdds.moved(curve.at(shot.distanceMm()), weaknesses.moved(shot.breaks(), shot.lie()));
            }
            return known[cell];
        }
    }
}
