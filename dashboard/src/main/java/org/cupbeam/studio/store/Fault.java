package org.cupbeam.studio.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * Something that was wrong with a lane's rig.
 *
 * @param words   as the lane said it first
 * @param beganMs when the host first heard of it, ms since 1970
 * @param endedMs when it heard that it was over; null while it goes on
 */
public record Fault(int lane, String words, long beganMs, Long endedMs) {
    private static final int MOST_LISTED = 2_000;

    /** Faults that went on at any time of a stretch, its end not included, the latest first; at most 2,000. */
    public static List<Fault> between(Handle h, Sight sight, long fromMs, long toMs) {
        return h.select("SELECT lane_id, words, began_ms, ended_ms FROM fault WHERE began_ms < ? "
                        + "AND (ended_ms IS NULL OR ended_ms > ?) AND " + sight.lane("lane_id") + " ORDER BY began_ms DESC, id DESC LIMIT " + MOST_LISTED,
                toMs, fromMs).map((row, ctx) -> new Fault(row.getInt(1), row.getString(2), row.getLong(3),
                row.getObject(4) == null ? null : row.getLong(4))).list();
    }

    /** How much of it lies in a stretch of time that ends now or before, in ms. */
    public long lastedMs(long fromMs, long toMs) {
        return Math.max(0, Math.min(endedMs == null ? toMs : endedMs, toMs) - Math.max(beganMs, fromMs));
    }
}
