package org.cupbeam.studio.store.logbook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * Attempts by filter. Where the filter asks for something of their runs, they come run by run, the newest run first and
 * in it the newest attempt; otherwise, outside any run included, by their times.
 */
public final class Attempts {
    private static final String BY_RUN = "SELECT " + AttemptRow.COLUMNS + ", r.started_ms FROM run r CROSS JOIN attempt a"
            + AttemptRow.NAMES + "WHERE a.run_id = r.id AND ";
    private static final String BY_TIME = "SELECT " + AttemptRow.COLUMNS + ", a.at_ms FROM attempt a "
            + "LEFT JOIN run r ON r.id = a.run_id" + AttemptRow.NAMES + "WHERE ";

    /** @param key the time that orders it: its run's beginning, or its own */
    private record Placed(AttemptRow row, long key) {
        Cursor byRun() {
            return Cursor.of(key, row.of().run(), row.sequence());
        }

        Cursor byTime() {
            return Cursor.of(key, row.id());
        }
    }

    private static final Comparator<Placed> RUN_BY_RUN = Comparator.comparingLong(Placed::key)
            .thenComparingInt(placed -> placed.row().of().run()).thenComparingLong(placed -> placed.row().sequence())
            .reversed();

    private static final Comparator<Placed> NEWEST_FIRST = Comparator.comparingLong(Placed::key)
            .thenComparingInt(placed -> placed.row().id()).reversed();

    private Attempts() {
    }

    /**
     * A page of attempts.
     *
     * @param after where the last page ended; null for the first
     * @param limit rows, 1 to {@link Page#MOST}
     */
    public static Page<AttemptRow> page(Handle h, LogFilter filter, Cursor after, int limit) {
        int size = Page.bounded(limit);
        Page<Placed> page = filter.anyRun() ? byTime(h, filter, after, size) : byRun(h, filter, after, size);
        return new Page<>(page.rows().stream().map(Placed::row).toList(), page.next());
    }

    /** One attempt by its number. */
    public static Optional<AttemptRow> one(Handle h, int id) {
        return select(h, BY_TIME + "a.id = ?", id).stream().map(Placed::row).findFirst();
    }

    /** A run's attempts from the first to the last, those that do not count included. */
    public static List<AttemptRow> ofRun(Handle h, int run) {
        return select(h, BY_TIME + "a.run_id = ? ORDER BY a.sequence", run).stream().map(Placed::row).toList();
    }

    private static Page<Placed> byTime(Handle h, LogFilter filter, Cursor after, int size) {
        List<Placed> rows = new ArrayList<>();
        for (Where each : filter.ofAttempts(h)) {
            if (after != null) {
                each.and("(a.at_ms, a.id) < (?, ?)", after.keys(2));
            }
            rows.addAll(select(h, BY_TIME + each.sql() + " ORDER BY a.at_ms DESC, a.id DESC LIMIT ?", each.values(size + 1)));
        }
        rows.sort(NEWEST_FIRST);
        return Page.of(rows.subList(0, Math.min(rows.size(), size + 1)), size, Placed::byTime);
    }

    private static Page<Placed> byRun(Handle h, LogFilter filter, Cursor after, int size) {
        List<Placed> rows = new ArrayList<>();
        for (Where each : filter.ofRuns(h)) {
            if (after != null) {
                Object[] keys = after.keys(3);
                each.and("(r.started_ms, r.id) <= (?, ?)", keys[0], keys[1])
                        .and("(r.id <> ? OR a.sequence < ?)", keys[1], keys[2]);
            }
            rows.addAll(select(h, BY_RUN + each.sql() + " ORDER BY r.started_ms DESC, r.id DESC, a.sequence DESC LIMIT ?",
                    each.values(size + 1)));
        }
        rows.sort(RUN_BY_RUN);
        return Page.of(rows.subList(0, Math.min(rows.size(), size + 1)), size, Placed::byRun);
    }

    private static List<Placed> select(Handle h, String sql, Object... values) {
        return h.select(sql, values).map((row, ctx) -> new Placed(AttemptRow.read(row), row.getLong(33))).list();
    }
}
