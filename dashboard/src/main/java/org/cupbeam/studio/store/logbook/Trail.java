package org.cupbeam.studio.store.logbook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.cupbeam.studio.store.Sight;
import org.jdbi.v3.core.Handle;

/** What was put right afterwards, at a lane or here, the newest first: who, when, why, and what it was before. */
public final class Trail {
    private static final String AT_A_LANE = "SELECT c.what, a.player_id, a.run_id, a.id, NULL, NULL, c.by_whom, c.reason, "
            + "c.at_ms, c.journal_id, c.sequence FROM ";
    private static final String ITS_ATTEMPT = "a.journal_id = c.journal_id AND a.sequence = c.of_sequence";
    private static final String LATEST = " ORDER BY c.at_ms DESC LIMIT " + Page.MOST;
    private static final String LATEST_HERE = " ORDER BY m.at_ms DESC LIMIT " + Page.MOST;
    private static final String HERE = "SELECT m.what, m.player_id, m.run_id, m.attempt_id, m.was, m.became, m.by_whom, "
            + "m.reason, m.at_ms, 0, m.id FROM amendment m ";
    private static final Comparator<Change> NEWEST_FIRST = Comparator.comparingLong(Change::atMs)
            .thenComparingInt(Change::journal).thenComparingLong(Change::number).reversed();

    private Trail() {
    }

    /** A page of all changes. */
    public static Page<Change> page(Handle h, Sight sight, Cursor after, int limit) {
        int size = Page.bounded(limit);
        Where lane = new Where();
        Where here = new Where();
        if (!sight.isAll()) {
            lane.and("c.journal_id IN (SELECT j.id FROM journal j WHERE " + sight.lane("j.lane_id") + ")");
            here.and(sight.amendment());
        }
        if (after != null) {
            Object[] keys = after.keys(3);
            lane.and("c.at_ms <= ?", keys[0]).and("(c.at_ms, c.journal_id, c.sequence) < (?, ?, ?)", keys);
            here.and("m.at_ms <= ?", keys[0]).and("(m.at_ms, 0, m.id) < (?, ?, ?)", keys);
        }
        List<Change> all = new ArrayList<>();
        all.addAll(list(h, AT_A_LANE + "correction c LEFT JOIN attempt a ON " + ITS_ATTEMPT + " WHERE "
                + lane.sql() + " ORDER BY c.at_ms DESC, c.journal_id DESC, c.sequence DESC LIMIT ?",
                lane.values(size + 1)));
        all.addAll(list(h, HERE + "WHERE " + here.sql() + " ORDER BY m.at_ms DESC, m.id DESC LIMIT ?", here.values(size + 1)));
        all.sort(NEWEST_FIRST);
        return Page.of(all.subList(0, Math.min(all.size(), size + 1)), size,
                change -> Cursor.of(change.atMs(), change.journal(), change.number()));
    }

    /** Of a run and its attempts. */
    public static List<Change> ofRun(Handle h, int run) {
        List<Change> all = list(h, AT_A_LANE + "attempt a CROSS JOIN correction c WHERE a.run_id = ? AND " + ITS_ATTEMPT + LATEST, run);
        all.addAll(list(h, HERE + "JOIN attempt a ON a.id = m.attempt_id WHERE a.run_id = ?" + LATEST_HERE, run));
        return of(all, h, "m.run_id = ?", run);
    }

    /**
     * Of a player, the player's runs and their attempts; a thousand of each kind at most. What was put right at a lane does not
     * count any more, or was restored here: each is found by an index, and no other of the player's attempts is looked at.
     */
    public static List<Change> ofPlayer(Handle h, Sight sight, int player) {
        String its = " CROSS JOIN correction c WHERE a.player_id = ? AND " + sight.lane("a.lane_id") + " AND " + ITS_ATTEMPT;
        List<Change> lane = new ArrayList<>();
        lane.addAll(list(h, AT_A_LANE + "attempt a" + its + " AND a.counts = 0" + LATEST, player));
        lane.addAll(list(h, AT_A_LANE + "(SELECT DISTINCT attempt_id FROM amendment WHERE of_player = ? AND what = 'restored') AS m "
                + "CROSS JOIN attempt a" + its + " AND a.id = m.attempt_id AND a.counts = 1" + LATEST, player, player));
        return of(lane, h, "m.of_player = ? AND " + sight.amendment(), player);
    }

    private static List<Change> of(List<Change> others, Handle h, String here, int id) {
        List<Change> all = new ArrayList<>(others);
        all.addAll(list(h, HERE + "WHERE " + here + LATEST_HERE, id));
        all.sort(NEWEST_FIRST);
        return all;
    }

    private static List<Change> list(Handle h, String sql, Object... values) {
        return h.select(sql, values).map((row, ctx) -> Change.read(row)).list();
    }
}
