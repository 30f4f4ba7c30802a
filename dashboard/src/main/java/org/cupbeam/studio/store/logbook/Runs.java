package org.cupbeam.studio.store.logbook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.store.Sight;
import org.jdbi.v3.core.Handle;

/** Runs by filter, the newest first. */
public final class Runs {
    private static final String SELECT = "SELECT " + RunRow.COLUMNS + " FROM run r" + RunRow.NAMES + "WHERE ";
    private static final Comparator<RunRow> NEWEST_FIRST =
            Comparator.comparingLong(RunRow::startedMs).thenComparingInt(RunRow::id).reversed();

    private Runs() {
    }

    /**
     * A page of runs.
     *
     * @param after where the last page ended; null for the first
     * @param limit rows, 1 to {@link Page#MOST}
     */
    public static Page<RunRow> page(Handle h, LogFilter filter, Cursor after, int limit) {
        int size = Page.bounded(limit);
        List<RunRow> rows = new ArrayList<>();
        for (Where each : filter.ofRuns(h)) {
            if (after != null) {
                each.and("(r.started_ms, r.id) < (?, ?)", after.keys(2));
            }
            rows.addAll(h.select(SELECT + each.sql() + " ORDER BY r.started_ms DESC, r.id DESC LIMIT ?",
                    each.values(size + 1)).map((row, ctx) -> RunRow.read(row)).list());
        }
        rows.sort(NEWEST_FIRST);
        return Page.of(rows.subList(0, Math.min(rows.size(), size + 1)), size,
                run -> Cursor.of(run.startedMs(), run.id()));
    }

    /** One run by its number. */
    public static Optional<RunRow> one(Handle h, int id) {
        return h.select(SELECT + "r.id = ?", id).map((row, ctx) -> RunRow.read(row)).findOne();
    }

    /** When a player's runs began, ms since 1970, the latest first. */
    public static List<Long> begunMs(Handle h, Sight sight, int player, int most) {
        return h.select("SELECT started_ms FROM run WHERE player_id = ? AND " + sight.lane("lane_id") + " ORDER BY started_ms DESC LIMIT ?", player,
                Page.bounded(most)).mapTo(Long.class).list();
    }

    /** The runs of a duel, in the order of play. */
    public static List<RunRow> ofDuel(Handle h, int duel) {
        return h.select(SELECT + "r.duel_id = ? ORDER BY r.play_order, r.id", duel).map((row, ctx) -> RunRow.read(row))
                .list();
    }
}
