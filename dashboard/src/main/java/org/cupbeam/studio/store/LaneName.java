package org.cupbeam.studio.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/** A lane by its number and its names on the wire. */
public record LaneName(int id, String studio, String lane) {
    /** Every lane that ever had an event and is seen, in the order in which they came. */
    public static List<LaneName> all(Handle h, Sight sight) {
        return h.select("SELECT l.id, s.name, l.name FROM lane l JOIN studio s ON s.id = l.studio_id WHERE " + sight.lane("l.id")
                + " ORDER BY l.id")
                .map((row, ctx) -> new LaneName(row.getInt(1), row.getString(2), row.getString(3))).list();
    }

    /** The numbers of those that were putted on in a stretch of time, its end not included. */
    public static List<Integer> played(Handle h, long fromMs, long toMs) {
        return h.select("SELECT l.id FROM lane l WHERE EXISTS (SELECT 1 FROM lane_quarter q WHERE q.lane_id = l.id "
                        + "AND q.quarter >= ? AND q.quarter < ?) ORDER BY l.id", fromMs / LaneQuarter.LENGTH_MS,
                toMs / LaneQuarter.LENGTH_MS).mapTo(Integer.class).list();
    }
}
