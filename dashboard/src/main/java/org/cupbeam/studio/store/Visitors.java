package org.cupbeam.studio.store;

import org.jdbi.v3.core.Handle;

/**
 * What was played in a stretch of time, and by how many.
 *
 * @param runs      begun in it
 * @param duels     of these, counted once each
 * @param players   different ones who began a run in it, those forgotten since included
 * @param returning of these, who had begun one before it
 * @param emptied   how often the cup had to be emptied: stays at a station with a ball holed that counts, since the next
 *                  stay begins with that ball in hand again
 */
public record Visitors(int runs, int duels, int players, int returning, int emptied) {

    /** On the lanes that are seen. @param toMs not included */
    public static Visitors between(Handle h, Sight sight, long fromMs, long toMs) {
        String lane = sight.lane("lane_id");
        int emptied = h.select("""
                SELECT count(*) FROM (SELECT DISTINCT run_id, visit FROM attempt
                    WHERE holed = 1 AND counts = 1 AND run_id IS NOT NULL AND at_ms >= ? AND at_ms < ? AND %s) AS stays
                """.formatted(lane), fromMs, toMs).mapTo(Integer.class).one();
        int returning = h.select("""
                SELECT count(*) FROM (SELECT DISTINCT player_id FROM run WHERE started_ms >= ? AND started_ms < ? AND %s) AS here
                WHERE EXISTS (SELECT 1 FROM run r WHERE r.player_id = here.player_id AND r.started_ms < ? AND %s)
                """.formatted(lane, sight.lane("r.lane_id")), fromMs, toMs, fromMs).mapTo(Integer.class).one();
        return h.select("SELECT count(*), count(DISTINCT duel_id), count(DISTINCT player_id) FROM run "
                + "WHERE started_ms >= ? AND started_ms < ? AND " + lane, fromMs, toMs).map((row, ctx) ->
                new Visitors(row.getInt(1), row.getInt(2), row.getInt(3), returning, emptied)).one();
    }

    /** Players who came for the first time. */
    public int newcomers() {
        return players - returning;
    }
}
