package org.cupbeam.studio.coach;

import java.util.List;
import java.util.function.Function;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.store.PlayerPutt;
import org.jdbi.v3.core.Handle;

/** Makes shots of a player's putts as they come from the store, in order of time. */
public final class ShotReader implements Function<PlayerPutt, Shot> {
    /** A player who has not putted for so long begins another session. */
    public static final long BREAK_MS = 2 * 3_600_000L;

    private long session;
    private long beforeMs = Long.MAX_VALUE;

    private ShotReader() {
    }

    /** All of a player's. @param lanes on which; null for any */
    public static List<Shot> all(Handle h, int player, List<Integer> lanes) {
        return PlayerPutt.all(h, player, lanes, new ShotReader());
    }

    @Override
    public Shot apply(PlayerPutt putt) {
        session = beforeMs == Long.MAX_VALUE ? 0 : Sessions.next(session, beforeMs, putt.atMs(), BREAK_MS);
        beforeMs = putt.atMs();
        return new Shot(session, putt.atMs(), putt.distanceMm(), putt.holed(), putt.finishMm(), putt.finishBelowMm(),
                putt.paceMm(), putt.speedAtHoleMmPerS(), putt.rim(), turning(putt.tags().breaks()),
                lying(putt.tags().slope()), putt.stimpFt(), putt.stimpSdFt());
    }

    private static Break turning(Tags.Break orNull) {
        if (orNull == null) {
            return Break.UNKNOWN;
        }
        return switch (orNull) {
            case LEFT_TO_RIGHT -> Break.LEFT_TO_RIGHT;
            case RIGHT_TO_LEFT -> Break.RIGHT_TO_LEFT;
            case STRAIGHT -> Break.STRAIGHT;
        };
    }

    private static Lie lying(Tags.Slope orNull) {
        if (orNull == null) {
            return Lie.UNKNOWN;
        }
        return switch (orNull) {
            case UPHILL -> Lie.UPHILL;
            case DOWNHILL -> Lie.DOWNHILL;
            case LEVEL -> Lie.LEVEL;
        };
    }
}
