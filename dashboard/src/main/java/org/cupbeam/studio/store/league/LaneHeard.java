package org.cupbeam.studio.store.league;

import java.util.List;
import org.cupbeam.studio.store.LaneQuarter;
import org.jdbi.v3.core.Handle;

/**
 * Up to when what a lane had to say is here.
 *
 * @param inUse   whether it was putted on in the time that is asked about
 * @param heardMs when the last of its events that is kept happened, ms since 1970; 0 where none is
 */
public record LaneHeard(String studio, String lane, boolean inUse, long heardMs) {
    /** Every lane that was ever heard. */
    public static List<LaneHeard> all(Handle h, long fromMs, long toMs) {
        return h.select("""
                SELECT s.name, l.name, EXISTS (SELECT 1 FROM lane_quarter q WHERE q.lane_id = l.id AND q.quarter >= ? AND q.quarter < ?),
                    (SELECT max(e.at_ms) FROM journal j JOIN event e ON e.journal_id = j.id AND e.sequence = (SELECT max(f.sequence)
                        FROM event f WHERE f.journal_id = j.id) WHERE j.lane_id = l.id)
                FROM lane l JOIN studio s ON s.id = l.studio_id ORDER BY s.name, l.name
                """, fromMs / LaneQuarter.LENGTH_MS, toMs / LaneQuarter.LENGTH_MS).map((row, ctx) -> new LaneHeard(row.getString(1),
                row.getString(2), row.getBoolean(3), row.getLong(4))).list();
    }

    /** The same, heard up to then at least. */
    public LaneHeard upTo(long otherMs) {
        return new LaneHeard(studio, lane, inUse, Math.max(heardMs, otherMs));
    }
}
