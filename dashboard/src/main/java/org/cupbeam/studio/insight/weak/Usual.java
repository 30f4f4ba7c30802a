package org.cupbeam.studio.insight.weak;

import java.util.List;
import org.cupbeam.studio.insight.chance.Summit;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Stroke;
import org.cupbeam.studio.insight.make.Tries;

/**
 * The usual player of somebody's strength: direction and pace as good or bad as each other, as published for amateurs,
 * and both by the same factor better or worse, so that all putts together are holed as often as this player did. What
 * the short and the long putts are set against.
 */
final class Usual {
    private static final double DIRECTION_RAD = Math.toRadians(1.5);
    private static final double PACE_SD = 0.085;
    private static final double AIM_PAST_MM = 300;
    private static final double MISHIT_SHARE = 0.005;
    private static final double FACTOR_LOG_SD = 0.6;

    private Usual() {
    }

    static MakeCurve curve(List<Tries> places, double decelerationMmPerS2) {
        List<Tries> rows = Tries.together(places);
        Summit summit = Summit.of(log -> {
            MakeCurve curve = of(Math.exp(log[0]), decelerationMmPerS2);
            double sum = -0.5 * Math.pow(log[0] / FACTOR_LOG_SD, 2);
            for (Tries row : rows) {
                double chance = Math.min(1 - 1e-9, Math.max(1e-9, curve.at(row.distanceMm())));
                sum += row.made() * Math.log(chance) + (row.tries() - row.made()) * Math.log1p(-chance);
            }
            return sum;
        }, 0);
        return of(Math.exp(summit.at()[0]), decelerationMmPerS2);
    }

    private static Stroke of(double factor, double decelerationMmPerS2) {
        return new Stroke(factor * DIRECTION_RAD, AIM_PAST_MM, factor * PACE_SD, MISHIT_SHARE, decelerationMmPerS2);
    }
}
