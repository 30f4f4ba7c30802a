package org.cupbeam.studio.insight.make;

import java.util.ArrayList;
import java.util.List;

/** Lengths of rolls, counted: by where they were putted from, in hundredths of that distance. */
public final class PaceTally {
    /** Distances within so small a share of each other count as one place, at their mean. */
    private static final double LOG_STEP = 0.05;
    private static final int PARTS = 100;
    /** Rolls of more than so many times the distance count as this. */
    private static final int LONGEST = 4 * PARTS;
    private static final int WHOLE = 0;
    private static final int CUT = 1;

    /** Up to 1 km. */
    private static final int PLACES = (int) (Math.log(1e6) / LOG_STEP) + 2;

    private final Place[] byDistance = new Place[PLACES];

    private static final class Place {
        private final int[][] counts = new int[2][LONGEST + 1];
        private double distancesMm;
        private int putts;
    }

    /**
     * Rolls alike.
     *
     * @param distanceMm putted from
     * @param paceMm     where they would stop past the hole; of those not seen, below which
     * @param seen       whether the pace is known
     * @param putts      how many
     */
    record Rolls(double distanceMm, double paceMm, boolean seen, int putts) {
    }

    /** A roll whose pace is known. */
    public void add(double distanceMm, double paceMm) {
        count(distanceMm, paceMm, WHOLE);
    }

    /** A roll that is only known to have stopped short of this. */
    public void addBelow(double distanceMm, double paceMm) {
        count(distanceMm, paceMm, CUT);
    }

    private Place place(int step) {
        if (byDistance[step] == null) {
            byDistance[step] = new Place();
        }
        return byDistance[step];
    }

    List<Rolls> rolls() {
        List<Rolls> all = new ArrayList<>();
        for (Place place : byDistance) {
            if (place == null) {
                continue;
            }
            int[][] counts = place.counts;
            double distanceMm = place.distancesMm / place.putts;
            for (int part = 0; part <= LONGEST; part++) {
                double share = (part + 0.5) / PARTS - 1;
                if (counts[WHOLE][part] > 0) {
                    all.add(new Rolls(distanceMm, share * distanceMm, true, counts[WHOLE][part]));
                }
                if (counts[CUT][part] > 0) {
                    all.add(new Rolls(distanceMm, share * distanceMm, false, counts[CUT][part]));
                }
            }
        }
        return all;
    }

    private void count(double distanceMm, double paceMm, int which) {
        int step = (int) Math.max(0, Math.round(Math.log(distanceMm) / LOG_STEP));
        int part = (int) Math.min(LONGEST, Math.max(0, PARTS * (1 + paceMm / distanceMm)));
        Place place = place(step);
        place.counts[which][part]++;
        place.distancesMm += distanceMm;
        place.putts++;
    }
}
