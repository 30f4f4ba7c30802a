package org.cupbeam.track;

/**
 * Strikes that have not met their ball yet.
 *
 * <p>A ball met at a beam with its speed tells how far away it was struck, a drop how long it rolled. Of several strikes
 * the one is the ball's own that agrees best with what has been usual here.
 */
final class Strikes {
    /** Echoes of one strike fall within this. */
    private static final long ECHO_NS = 250_000_000;
    /** A putter's blow is over sooner; something set down on the sensor is not. */
    private static final long LONGEST_NS = 10_000_000;
    private static final int MOST = 16;
    /** Strikes further from the first sensor than this, or nearer, are not putts at this hole. */
    static final double FARTHEST_MM = 13_000;
    private static final double NEAREST_MM = 250;
    /** Nor does a ball drop sooner after its strike than this. */
    private static final double SHORTEST_S = 0.25;
    /** An older strike that still waits is one whose ball missed unseen: for a later one's to be meant, it must have. */
    private static final double MISSED_UNSEEN = 1.0;

    private static final int TRUST = 6;
    private static final int TRUST_MOST = 12;
    private static final int MISSED_COSTS = 3;

    private final long[] timeNs = new long[MOST];
    private int count;
    private long lastNs = Long.MIN_VALUE / 2;
    private int met;
    private final Habit distanceMm = new Habit(2500, 0.7, 0.02);
    private final Habit dropS = new Habit(2.2, 0.55, 0.12);

    /** Takes a pulse of the strike sensor: a new strike unless it is an echo, or too long for one. */
    void pulse(long onNs, long offNs) {
        if (onNs - lastNs > ECHO_NS && offNs - onNs < LONGEST_NS) {
            lastNs = onNs;
            giveBack(onNs);
        }
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

    /** Forgets those since a time: the sensor was out of order already. */
    void forgetSince(long sinceNs) {
        while (count > 0 && timeNs[count - 1] >= sinceNs) {
            count--;
        }
    }

    int count() {
        return count;
    }

    /** Notes whether a ball that was surely one had been felt as it was struck. */
    void felt(boolean whether) {
        met = whether ? Math.min(met + 1, TRUST_MOST) : met - MISSED_COSTS;
    }

    /** Whether the sensor has felt so many of the balls that one without a strike is likely none. */
    boolean isTrusted() {
        return met >= TRUST;
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
     * @param atNs         when it was at a beam
     * @param speed        how fast it was there, mm/s
     * @param deceleration mm/s²
     * @return {@link Sensor#NEVER} if none fits
     */
    long takeFor(long atNs, double speed, double deceleration) {
        int best = -1;
        double bestMm = 0;
        double most = 0;
        double weight = 1;
        for (int i = 0; i < count; i++) {
            double s = (atNs - timeNs[i]) * 1e-9;
            double mm = (speed + deceleration * s / 2) * s;
            if (s > 0 && mm > NEAREST_MM && mm < FARTHEST_MM) {
                double likely = weight * distanceMm.likelihood(mm);
                if (likely > most) {
                    most = likely;
                    best = i;
                    bestMm = mm;
                }
                weight *= MISSED_UNSEEN;
            }
        }
        if (best >= 0 && count == 1) {
            distanceMm.saw(bestMm);
        }
        return best < 0 ? Sensor.NEVER : remove(best);
    }

    /** Takes out the strike of a ball that dropped, of which nothing else was seen; {@link Sensor#NEVER} if none fits. */
    long takeForDrop(long dropNs) {
        int best = -1;
        double most = 0;
        double weight = 1;
        for (int i = 0; i < count; i++) {
            double s = (dropNs - timeNs[i]) * 1e-9;
            if (s > SHORTEST_S) {
                double likely = weight * dropS.likelihood(s);
                if (likely > most) {
                    most = likely;
                    best = i;
                }
                weight *= MISSED_UNSEEN;
            }
        }
        if (best >= 0 && count == 1) {
            dropS.saw((dropNs - timeNs[best]) * 1e-9);
        }
        return best < 0 ? Sensor.NEVER : remove(best);
    }

    private long remove(int index) {
        long taken = timeNs[index];
        System.arraycopy(timeNs, index + 1, timeNs, index, count - index - 1);
        count--;
        return taken;
    }
}
