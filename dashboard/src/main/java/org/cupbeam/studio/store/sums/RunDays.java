package org.cupbeam.studio.store.sums;

import java.util.SortedMap;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/**
 * What tells whether the runs that began within a time are still what they were. Whoever changes what a run came to, whose it is
 * or when it began says so here, within the same transaction.
 *
 * @param changes of each day (UTC) on which anything was changed, until now
 */
public record RunDays(SortedMap<Long, Long> changes) {
    private static final String CHANGED = "INSERT INTO run_day (day, changes) SELECT (started_ms - (started_ms % 86400000 + 86400000) % 86400000) "
            + "/ 86400000, 1 FROM run WHERE #which GROUP BY 1 ON CONFLICT (day) DO UPDATE SET changes = run_day.changes + 1";

    /** Now; to be asked before the runs themselves, so that what comes in between is not taken for known. */
    public static RunDays between(Handle h, long fromMs, long toMs) {
        SortedMap<Long, Long> changes = new TreeMap<>();
        h.select("SELECT day, changes FROM run_day WHERE day BETWEEN ? AND ?", Math.floorDiv(fromMs, RunSums.DAY_MS),
                Math.floorDiv(toMs - 1, RunSums.DAY_MS)).map((row, ctx) -> changes.put(row.getLong(1), row.getLong(2))).list();
        return new RunDays(changes);
    }

    /** A number that is another one once a run is that began in that time; {@code toMs} is no longer in it. */
    public long within(long fromMs, long toMs) {
        return changes.subMap(Math.floorDiv(fromMs, RunSums.DAY_MS), Math.floorDiv(toMs - 1, RunSums.DAY_MS) + 1).values().stream()
                .mapToLong(Long::longValue).sum();
    }

    /** @param which a condition on the table {@code run} */
    public static void changed(Handle h, String which, Object... values) {
        h.execute(CHANGED.replace("#which", which), values);
    }
}
