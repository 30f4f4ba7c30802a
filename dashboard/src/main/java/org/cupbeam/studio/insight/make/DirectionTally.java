package org.cupbeam.studio.insight.make;

/**
 * Putts that reached the hole, counted by how far off the line each might have started: all that a direction is fitted
 * from.
 */
public final class DirectionTally {
    private static final double NARROWEST_RAD = 1e-4;
    private static final double LOG_STEP = 0.04;
    /** From the narrowest to a right angle. */
    private static final int CELLS = (int) (Math.log(Math.PI / 2 / NARROWEST_RAD) / LOG_STEP) + 1;

    private final int[] tries = new int[CELLS];
    private final int[] made = new int[CELLS];

    /** One more putt; one that the hole could not have kept tells nothing. */
    public void add(double halfAngleRad, boolean holed) {
        addTo(cell(halfAngleRad), holed);
    }

    /** One more putt of a cell; none where that is -1. */
    public void addTo(int cell, boolean holed) {
        if (cell >= 0) {
            tries[cell]++;
            made[cell] += holed ? 1 : 0;
        }
    }

    /** The cell of a half angle; -1 for none. */
    public static int cell(double halfAngleRad) {
        return halfAngleRad < NARROWEST_RAD ? -1
                : Math.min(CELLS - 1, (int) (Math.log(halfAngleRad / NARROWEST_RAD) / LOG_STEP));
    }

    /** The half angle in the middle of a cell. */
    public static double halfAngleRad(int cell) {
        return NARROWEST_RAD * Math.exp((cell + 0.5) * LOG_STEP);
    }

    /** How many cells there are. */
    public static int cells() {
        return CELLS;
    }

    int tries(int cell) {
        return tries[cell];
    }

    int made(int cell) {
        return made[cell];
    }

    int putts() {
        int sum = 0;
        for (int each : tries) {
            sum += each;
        }
        return sum;
    }
}
