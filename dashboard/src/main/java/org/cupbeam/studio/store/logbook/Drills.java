package org.cupbeam.studio.store.logbook;

import java.util.List;
import org.cupbeam.studio.store.Sight;
import org.jdbi.v3.core.Handle;

/** The drills that were played. */
public final class Drills {
    private static final int MOST = 500;

    private Drills() {
    }

    /** Their names, each once, in the alphabet's order; at most 500. */
    public static List<String> names(Handle h, Sight sight) {
        return h.select("SELECT DISTINCT d.name FROM drill d WHERE " + played(sight) + " ORDER BY d.name LIMIT " + MOST)
                .mapTo(String.class).list();
    }

    private static String played(Sight sight) {
        return sight.isAll() ? "1 = 1" : "EXISTS (SELECT 1 FROM run r WHERE r.drill_id = d.id AND " + sight.lane("r.lane_id") + ")";
    }

    /** A drill as it was played: its terms as JSON, as the events carry it. */
    public record Played(int id, String name, String terms) {
    }

    /** Those that a player played in the latest runs, the last first; at most so many. */
    public static List<Played> ofPlayer(Handle h, Sight sight, int player, int most) {
        return h.select("""
                SELECT d.id, d.name, d.terms FROM drill d JOIN (
                    SELECT drill_id, max(started_ms) AS last_ms FROM (
                        SELECT drill_id, started_ms FROM run WHERE player_id = ? AND drill_id IS NOT NULL AND %s
                        ORDER BY started_ms DESC LIMIT 500) AS latest
                    GROUP BY drill_id) AS played ON played.drill_id = d.id
                ORDER BY played.last_ms DESC, d.id LIMIT ?
                """.formatted(sight.lane("lane_id")), player, most).map((row, ctx) -> new Played(row.getInt(1), row.getString(2), row.getString(3))).list();
    }
}
