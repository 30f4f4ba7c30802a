package org.cupbeam.studio.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * What a lane did in a quarter of an hour.
 *
 * @param quarter of an hour since 1970, UTC
 * @param putts   that count
 * @param firstMs of the first of them; the last likewise
 * @param playMs  between putts in this quarter no more than {@link #LONGEST_PAUSE_MS} apart
 */
public record LaneQuarter(int lane, long quarter, int putts, int holed, long firstMs, long lastMs, long playMs) {
    /** How long a quarter is. */
    public static final long LENGTH_MS = Quarters.LENGTH_MS;
    /** A lane where nobody has putted for longer was not in play meanwhile. */
    public static final long LONGEST_PAUSE_MS = 300_000;

    /** The quarters that begin in a stretch of time, its end not included, each lane's in order. */
    public static List<LaneQuarter> between(Handle h, Sight sight, long fromMs, long toMs) {
        return h.select("""
                SELECT lane_id, quarter, putts, holed, first_ms, last_ms, play_ms FROM lane_quarter
                WHERE quarter >= ? AND quarter < ? AND %s ORDER BY lane_id, quarter
                """.formatted(sight.lane("lane_id")), firstFrom(fromMs), firstFrom(toMs)).map((row, ctx) -> new LaneQuarter(row.getInt(1),
                row.getLong(2), row.getInt(3), row.getInt(4), row.getLong(5), row.getLong(6), row.getLong(7))).list();
    }

    /** When it begins, ms since 1970. */
    public long startMs() {
        return quarter * LENGTH_MS;
    }

    /** What of the time from this one's last putt to a later one's first is play, in ms. */
    public long playUntil(LaneQuarter later) {
        return Quarters.playBetween(lastMs, later.firstMs);
    }

    private static long firstFrom(long ms) {
        return -Math.floorDiv(-ms, LENGTH_MS);
    }
}
