package org.cupbeam.studio.insight.make;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.cupbeam.studio.insight.chance.Proportion;

/**
 * Putts from one distance.
 *
 * @param distanceMm from the hole's centre, above 0
 * @param tries      1 or more
 * @param made       of these
 */
public record Tries(double distanceMm, int tries, int made) {
    private static final double LOG_STEP = 0.04;

    public Tries {
        if (!(distanceMm > 0) || tries < 1 || made < 0 || made > tries) {
            throw new IllegalArgumentException(made + " of " + tries + " putts from " + distanceMm + " mm cannot be");
        }
    }

    /** The same putts with places within a few hundredths of each other taken together, for curves that are smooth. */
    public static List<Tries> together(List<Tries> places) {
        Map<Long, Tries> rows = new TreeMap<>();
        places.forEach(place -> rows.merge(Math.round(Math.log(place.distanceMm) / LOG_STEP), place, Tries::plus));
        return List.copyOf(rows.values());
    }

    private Tries plus(Tries other) {
        int all = tries + other.tries;
        return new Tries((distanceMm * tries + other.distanceMm * other.tries) / all, all, made + other.made);
    }

    public Proportion proportion() {
        return new Proportion(made, tries);
    }
}
