package org.cupbeam.drill;

import java.util.List;

/** The places to putt from, numbered from 1, each by its distance from the hole's centre. */
public sealed interface Stations {
    /** How many stations a drill may have. */
    int COUNT_MAX = 100;
    /** The nearest and the furthest a station may stand, in mm. */
    double NEAREST_MM = 100;
    double FURTHEST_MM = 50_000;

    /** How many there are, 1 to {@link #COUNT_MAX}. */
    int count();

    /** A station's distance from the hole's centre in mm; the first is number 1. */
    double atMm(int station);

    /**
     * Stations one step apart, each further from the hole.
     *
     * @param firstMm where the first stands
     * @param stepMm  0 or more
     */
    record Ladder(double firstMm, double stepMm, int count) implements Stations {
        public Ladder {
            require(count >= 1 && count <= COUNT_MAX, "a ladder has 1 to " + COUNT_MAX + " stations, not " + count);
            require(stepMm >= 0, "a ladder's step is 0 mm or more, not " + stepMm);
            requireInReach(firstMm);
            requireInReach(firstMm + (count - 1) * stepMm);
        }

        @Override
        public double atMm(int station) {
            require(station >= 1 && station <= count, "no station " + station);
            return firstMm + (station - 1) * stepMm;
        }
    }

    /** Stations wherever they are wanted, putted from in the order given. */
    record Marked(List<Double> atMm) implements Stations {
        public Marked {
            atMm = List.copyOf(atMm);
            require(!atMm.isEmpty() && atMm.size() <= COUNT_MAX,
                    "a drill has 1 to " + COUNT_MAX + " stations, not " + atMm.size());
            atMm.forEach(Stations::requireInReach);
        }

        @Override
        public int count() {
            return atMm.size();
        }

        @Override
        public double atMm(int station) {
            require(station >= 1 && station <= count(), "no station " + station);
            return atMm.get(station - 1);
        }
    }

    private static void requireInReach(double mm) {
        require(mm >= NEAREST_MM && mm <= FURTHEST_MM,
                "a station stands " + NEAREST_MM + " to " + FURTHEST_MM + " mm from the hole, not " + mm);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
