package org.cupbeam.studio.insight.plot;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;

/**
 * Where a player's latest misses came to rest on the line.
 *
 * @param misses  the oldest first
 * @param limitMm past the hole, beyond which a miss has run too far
 * @param unseen  misses since the first of these that stopped where no beam could tell how far
 */
public record Stops(List<Miss> misses, double limitMm, int unseen) {
    /** As many as can be told apart on a line. */
    public static final int MOST = 300;

    /** @param finishMm along the line, past the hole positive */
    public record Miss(long atMs, double distanceMm, double finishMm, boolean rim) {
    }

    public Stops {
        misses = List.copyOf(misses);
    }

    /** Of all putts. */
    public static Stops of(Sessions sessions, double limitMm) {
        Deque<Miss> misses = new ArrayDeque<>();
        int unseen = 0;
        for (int i = sessions.shots().size() - 1; i >= 0 && misses.size() < MOST; i--) {
            Shot shot = sessions.shots().get(i);
            if (shot.hasFinish()) {
                misses.addFirst(new Miss(shot.atMs(), shot.distanceMm(), shot.finishMm(), shot.rim()));
            } else if (!shot.holed()) {
                unseen++;
            }
        }
        return new Stops(List.copyOf(misses), limitMm, unseen);
    }
}
