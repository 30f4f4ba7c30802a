package org.cupbeam.studio.store;

import org.cupbeam.studio.store.sums.RunSums;
import org.jdbi.v3.core.Handle;

/**
 * What was played in a stretch of time, and by how many.
 *
 * @param runs      begun in it
 * @param duels     of these, counted once each
 * @param players   different ones who began a run in it, those forgotten since included
 * @param returning of these, who had begun one before it
 * @param emptied   how often the cup had to be emptied: stays at a station with a ball holed that counts, since the next
 *                  stay begins with that ball in hand again; each where its first ball was holed
 */
public record Visitors(int runs, int duels, int players, int returning, int emptied) {
    private static final String IN_A_STRETCH = "SELECT player_id, 1 FROM run WHERE started_ms >= ? AND started_ms < ? AND #lane";
    private static final String HERE = "SELECT count(*), coalesce(sum(here.runs), 0), coalesce(sum(CASE WHEN EXISTS (SELECT 1 "
            + "FROM player_tally t WHERE t.player_id = here.player_id AND t.first_ms < ? AND #studio) THEN 1 ELSE 0 END), 0) FROM "
            + "(SELECT player_id, sum(runs) AS runs FROM (SELECT player_id, runs FROM player_day t WHERE day >= ? AND day < ? AND #studio "
            + "UNION ALL " + IN_A_STRETCH + " UNION ALL " + IN_A_STRETCH + ") AS parts GROUP BY player_id) AS here";

    /** On the lanes that are seen. Whole days, UTC, are read from their sums, what is before and after them run by run. @param toMs not included */
    public static Visitors between(Handle h, Sight sight, long fromMs, long toMs) {
        long firstDay = -Math.floorDiv(-fromMs, RunSums.DAY_MS);
        long lastDay = Math.max(firstDay, Math.floorDiv(toMs, RunSums.DAY_MS));
        long daysMs = Math.min(toMs, firstDay * RunSums.DAY_MS);
        String lane = sight.lane("lane_id");
        int emptied = h.select("SELECT coalesce(sum(emptied), 0) FROM lane_quarter WHERE quarter >= ? AND quarter < ? AND " + lane,
                LaneQuarter.firstFrom(fromMs), LaneQuarter.firstFrom(toMs)).mapTo(Integer.class).one();
        int duels = h.select("SELECT count(DISTINCT duel_id) FROM run WHERE started_ms >= ? AND started_ms < ? AND duel_id IS NOT NULL AND "
                + lane, fromMs, toMs).mapTo(Integer.class).one();
        return h.select(HERE.replace("#lane", lane).replace("#studio", sight.studio("t.studio_id")), fromMs, firstDay, lastDay, fromMs, daysMs,
                Math.max(daysMs, lastDay * RunSums.DAY_MS), toMs)
                .map((row, ctx) -> new Visitors(row.getInt(2), duels, row.getInt(1), row.getInt(3), emptied)).one();
    }

    /** Players who came for the first time. */
    public int newcomers() {
        return players - returning;
    }
}
