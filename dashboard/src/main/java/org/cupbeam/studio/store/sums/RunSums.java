package org.cupbeam.studio.store.sums;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Keeps the sums of runs by player: ever, and of each day. */
public final class RunSums {
    /** How long a day is, UTC, as the table {@code player_day} has it. */
    public static final long DAY_MS = 86_400_000;

    private record Key(long day, int studio, int player) {
    }

    private static final String DAYS = "SELECT (r.started_ms - (r.started_ms % 86400000 + 86400000) % 86400000) / 86400000, l.studio_id, "
            + "r.player_id, count(*) FROM run r JOIN lane l ON l.id = r.lane_id WHERE r.id IN (SELECT id FROM run WHERE #which) GROUP BY 1, 2, 3";
    private static final String EVER = "INSERT INTO player_tally (player_id, studio_id, runs, first_ms, last_ms) "
            + "SELECT r.player_id, l.studio_id, count(*), min(r.started_ms), max(r.started_ms) "
            + "FROM run r JOIN lane l ON l.id = r.lane_id WHERE r.player_id = ? GROUP BY r.player_id, l.studio_id";

    private RunSums() {
    }

    /** A run has been added. */
    public static void began(Handle h, int player, int lane, long startedMs) {
        int studio = h.select("SELECT studio_id FROM lane WHERE id = ?", lane).mapTo(Integer.class).one();
        h.execute("""
                INSERT INTO player_tally (player_id, studio_id, runs, first_ms, last_ms) VALUES (?, ?, 1, ?, ?)
                ON CONFLICT (player_id, studio_id) DO UPDATE SET runs = player_tally.runs + 1,
                    first_ms = CASE WHEN excluded.first_ms < player_tally.first_ms THEN excluded.first_ms ELSE player_tally.first_ms END,
                    last_ms = CASE WHEN excluded.last_ms > player_tally.last_ms THEN excluded.last_ms ELSE player_tally.last_ms END
                """, player, studio, startedMs, startedMs);
        add(h, Map.of(new Key(Math.floorDiv(startedMs, DAY_MS), studio, player), 1));
    }

    /**
     * Changes runs that are there: whose they are, or when they began.
     *
     * @param which a condition on the table {@code run}, which the same ones meet before and after the change
     */
    public static void around(Handle h, Runnable change, String which, Object... values) {
        Map<Key, Integer> more = new HashMap<>();
        Set<Integer> players = new TreeSet<>();
        count(h, -1, which, values, more, players);
        RunDays.changed(h, which, values);
        change.run();
        RunDays.changed(h, which, values);
        count(h, 1, which, values, more, players);
        more.values().removeIf(runs -> runs == 0);
        add(h, more);
        for (int player : players) {
            h.execute("DELETE FROM player_tally WHERE player_id = ?", player);
            h.execute(EVER, player);
        }
    }

    private static void count(Handle h, int times, String which, Object[] values, Map<Key, Integer> more, Set<Integer> players) {
        h.select(DAYS.replace("#which", which), values).map((row, ctx) -> {
            players.add(row.getInt(3));
            return Map.entry(new Key(row.getLong(1), row.getInt(2), row.getInt(3)), times * row.getInt(4));
        }).forEach(each -> more.merge(each.getKey(), each.getValue(), Integer::sum));
    }

    private static void add(Handle h, Map<Key, Integer> more) {
        if (more.isEmpty()) {
            return;
        }
        PreparedBatch batch = h.prepareBatch("INSERT INTO player_day (day, studio_id, player_id, runs) VALUES (?, ?, ?, ?) "
                + "ON CONFLICT (day, studio_id, player_id) DO UPDATE SET runs = player_day.runs + excluded.runs");
        more.forEach((key, runs) -> batch.add(key.day(), key.studio(), key.player(), runs));
        batch.execute();
        List<Key> fewer = more.entrySet().stream().filter(each -> each.getValue() < 0).map(Map.Entry::getKey).toList();
        fewer.forEach(key -> h.execute("DELETE FROM player_day WHERE day = ? AND studio_id = ? AND player_id = ? AND runs = 0",
                key.day(), key.studio(), key.player()));
    }
}
