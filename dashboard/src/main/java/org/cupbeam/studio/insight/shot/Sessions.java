package org.cupbeam.studio.insight.shot;

import java.util.Arrays;
import java.util.List;

/**
 * A player's putts by session, in order of time.
 *
 * @param shots    all of them
 * @param starts   where each session's first putt stands, and after the last the number of putts
 * @param measured whether a session's rig measures the pace of putts that drop: only then does it say something that it
 *                 measured a putt, and only then is pace learnt from it. A rig that sees the pace of misses alone would
 *                 teach that every putt is struck too hard
 */
public record Sessions(List<Shot> shots, int[] starts, boolean[] measured) {
    private static final double PACE_KNOWN_MIN = 0.8;

    /** Putts in order of time; a session ends where the next putt belongs to another. */
    public static Sessions of(List<Shot> shots) {
        int[] starts = new int[shots.size() + 1];
        int count = 0;
        for (int i = 0; i < shots.size(); i++) {
            if (i == 0 || shots.get(i).session() != shots.get(i - 1).session()) {
                starts[count++] = i;
            }
        }
        starts[count] = shots.size();
        Sessions sessions = new Sessions(shots, Arrays.copyOf(starts, count + 1), new boolean[count]);
        for (int session = 0; session < count; session++) {
            sessions.measured[session] = sessions.seesPace(session);
        }
        return sessions;
    }

    /**
     * Numbers for the sessions of putts at these times, in order: a new one after each break longer than so many ms. For
     * whoever keeps no sessions of their own.
     */
    public static long[] numbers(long[] atMs, long breakMs) {
        long[] numbers = new long[atMs.length];
        for (int i = 1; i < atMs.length; i++) {
            numbers[i] = next(numbers[i - 1], atMs[i - 1], atMs[i], breakMs);
        }
        return numbers;
    }

    /** The same, putt by putt: the number of the session of a putt that comes after one of session {@code number}. */
    public static long next(long number, long beforeMs, long atMs, long breakMs) {
        return number + (atMs - beforeMs > breakMs ? 1 : 0);
    }

    /** How many sessions. */
    public int count() {
        return starts.length - 1;
    }

    /** How many putts a session has. */
    public int putts(int session) {
        return starts[session + 1] - starts[session];
    }

    /** When a session began. */
    public long atMs(int session) {
        return shots.get(starts[session]).atMs();
    }

    /** How many putts belong to sessions whose rig measures pace. */
    public int measuredPutts() {
        int sum = 0;
        for (int session = 0; session < count(); session++) {
            sum += measured[session] ? putts(session) : 0;
        }
        return sum;
    }

    private boolean seesPace(int session) {
        int holed = 0;
        int seen = 0;
        for (int i = starts[session]; i < starts[session + 1]; i++) {
            Shot shot = shots.get(i);
            holed += shot.holed() ? 1 : 0;
            seen += shot.holed() && shot.hasPace() ? 1 : 0;
        }
        return holed > 0 && seen >= PACE_KNOWN_MIN * holed;
    }
}
