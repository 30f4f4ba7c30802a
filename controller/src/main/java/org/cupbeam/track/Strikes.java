package org.cupbeam.track;

/**
 * Strikes that have not met their ball yet.
 *
 * <p>A ball met at a beam with its speed tells how far away it was struck; of several strikes the one is its own that
 * puts it at a place players have putted from, or else the latest that puts it anywhere sensible.
 */
final class Strikes {
    /** Echoes of one strike fall within this. */
    private static final long ECHO_NS = 250_000_000;
    private static final int MOST = 16;
    private static final int STATIONS = 24;
    /** Strikes further from the first sensor than this, or nearer, are not putts at this hole. */
    static final double FARTHEST_MM = 13_000;
    private static final double NEAREST_MM = 250;
    /** How close to an earlier place a strike must have been to count as from there. */
    private static final double SAME_STATION = 0.03;

    private final long[] timeNs = new long[MOST];
    private int count;
    private long lastNs = Long.MIN_VALUE / 2;
    private final double[] stationMm = new double[STATIONS];
    private int stations;

    /** Takes a pulse of the strike sensor. True if it is a new strike, not an echo. */
    boolean pulse(long onNs) {
        boolean fresh = onNs - lastNs > ECHO_NS;
        if (fresh) {
            lastNs = onNs;
            giveBack(onNs);
        }
        return fresh;
    }

    /** Puts a strike among those that wait, in order of time; the oldest of too many is forgotten. */
    void giveBack(long strikeNs) {
        if (strikeNs == Sensor.NEVER) {
            return;
        }
        if (count == MOST) {
            remove(0);
        }
        int at = count++;
        while (at > 0 && timeNs[at - 1] > strikeNs) {
            timeNs[at] = timeNs[at - 1];
            at--;
        }
        timeNs[at] = strikeNs;
    }

    int count() {
        return count;
    }

    /** The oldest strike that still waits. */
    long oldestNs() {
        return count == 0 ? Sensor.NEVER : timeNs[0];
    }

    /** Takes out the oldest. */
    long takeOldest() {
        return remove(0);
    }

    /**
     * Takes out the strike of a ball.
     *
     * @param atNs        when it was at a beam
     * @param speed       how fast it was there, mm/s
     * @param deceleration mm/s²
     * @return {@link Sensor#NEVER} if none fits
     */
    long takeFor(long atNs, double speed, double deceleration) {
        int best = -1;
        double bestMm = 0;
        boolean bestKnown = false;
        for (int i = 0; i < count; i++) {
            double s = (atNs - timeNs[i]) * 1e-9;
            double mm = (speed + deceleration * s / 2) * s;
            if (s <= 0 || mm < NEAREST_MM || mm > FARTHEST_MM) {
                continue;
            }
            boolean known = isStation(mm);
            if (known || !bestKnown) {
                best = i;
                bestMm = mm;
                bestKnown = known;
            }
        }
        if (best < 0) {
            return Sensor.NEVER;
        }
        if (count == 1) {
            stationMm[stations++ % STATIONS] = bestMm;
        }
        return remove(best);
    }

    /** Takes out the latest strike that lies at least so long before; else the one before that, or none. */
    long takeBefore(long atNs, long leastNs) {
        for (int i = count - 1; i >= 0; i--) {
            if (atNs - timeNs[i] >= leastNs) {
                return remove(i);
            }
        }
        return Sensor.NEVER;
    }

    private boolean isStation(double mm) {
        for (int i = 0; i < Math.min(stations, STATIONS); i++) {
            if (Math.abs(stationMm[i] - mm) < SAME_STATION * mm) {
                return true;
            }
        }
        return false;
    }

    private long remove(int index) {
        long taken = timeNs[index];
        System.arraycopy(timeNs, index + 1, timeNs, index, count - index - 1);
        count--;
        return taken;
    }
}
