package org.cupbeam.studio.store;

import java.util.List;
import org.cupbeam.event.Topics;
import org.jdbi.v3.core.Handle;

/**
 * What a lane held its green's speed to be, as its attempts carry it.
 *
 * @param atMs    when, ms since 1970
 * @param stimpFt as on a level green
 * @param sdFt    how well that was known, standard deviation, above 0
 */
public record GreenReading(long atMs, double stimpFt, double sdFt) {

    /**
     * The last of each quarter of an hour that begins in a stretch of time, in order; the stretch's end is not included. One
     * follows from the one before, so those between tell nothing more.
     */
    public static List<GreenReading> between(Handle h, Topics lane, long fromMs, long toMs) {
        return h.select("""
                SELECT a.at_ms, a.stimp_ft, a.stimp_sd_ft FROM lane_quarter q
                JOIN attempt a ON a.lane_id = q.lane_id AND a.at_ms = q.last_ms
                WHERE q.lane_id = (SELECT l.id FROM lane l JOIN studio s ON s.id = l.studio_id
                    WHERE s.name = ? AND l.name = ?) AND q.quarter >= ? AND q.quarter < ? AND a.stimp_sd_ft > 0
                ORDER BY a.at_ms, a.sequence
                """, lane.studio(), lane.lane(), Math.floorDiv(fromMs, Quarters.LENGTH_MS),
                Math.floorDiv(toMs, Quarters.LENGTH_MS))
                .map((row, ctx) -> new GreenReading(row.getLong(1), row.getDouble(2), row.getDouble(3))).list();
    }
}
