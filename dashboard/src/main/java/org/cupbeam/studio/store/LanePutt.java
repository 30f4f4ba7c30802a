package org.cupbeam.studio.store;

import java.util.List;
import org.cupbeam.event.Topics;
import org.jdbi.v3.core.Handle;

/**
 * An attempt at a lane, with what was said of it since.
 *
 * @param sequence    of its event in the lane's journal
 * @param player      null outside any run, or once forgotten
 * @param station     from 1; null outside any run, as is its distance
 * @param finishMm    null where it is not known, or holed
 * @param counts      false once taken back or voided
 * @param corrected   {@code taken-back} or {@code voided}; null where it was not
 * @param correctedBy by whom
 * @param atMs        when, ms since 1970
 */
public record LanePutt(long sequence, String player, Integer station, Double stationMm, boolean holed, Double finishMm,
                       boolean overshoot, boolean entered, boolean counts, String corrected, String correctedBy,
                       long atMs) {

    /** The newest of one journal of a lane, newest first. */
    public static List<LanePutt> newest(Handle h, Topics lane, String journal, int most) {
        return h.select("""
                SELECT a.sequence, p.name, a.station, a.station_mm, a.holed, a.finish_mm, a.overshoot, a.entered, a.counts,
                    c.what, c.by_whom, a.at_ms
                FROM attempt a LEFT JOIN player p ON p.id = a.player_id
                LEFT JOIN correction c ON c.journal_id = a.journal_id AND c.sequence = (SELECT max(d.sequence)
                    FROM correction d WHERE d.journal_id = a.journal_id AND d.of_sequence = a.sequence)
                WHERE a.journal_id = (SELECT j.id FROM journal j JOIN lane l ON l.id = j.lane_id
                    JOIN studio s ON s.id = l.studio_id WHERE s.name = ? AND l.name = ? AND j.name = ?)
                ORDER BY a.sequence DESC LIMIT ?
                """, lane.studio(), lane.lane(), journal, most).map((row, ctx) -> new LanePutt(row.getLong(1),
                row.getString(2), whole(row.getObject(3)), number(row.getObject(4)), row.getInt(5) != 0,
                number(row.getObject(6)), row.getInt(7) != 0, row.getInt(8) != 0, row.getInt(9) != 0,
                row.getString(10), row.getString(11), row.getLong(12))).list();
    }

    private static Integer whole(Object valueOrNull) {
        return valueOrNull == null ? null : ((Number) valueOrNull).intValue();
    }

    private static Double number(Object valueOrNull) {
        return valueOrNull == null ? null : ((Number) valueOrNull).doubleValue();
    }
}
