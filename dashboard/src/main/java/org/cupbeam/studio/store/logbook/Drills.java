package org.cupbeam.studio.store.logbook;

import java.util.List;
import org.jdbi.v3.core.Handle;

/** The drills that were played. */
public final class Drills {
    private static final int MOST = 500;

    private Drills() {
    }

    /** Their names, each once, in the alphabet's order; at most 500. */
    public static List<String> names(Handle h) {
        return h.select("SELECT DISTINCT name FROM drill ORDER BY name LIMIT " + MOST).mapTo(String.class).list();
    }

    /** A drill as it was played: its terms as JSON, as the events carry it. */
    public record Played(int id, String name, String terms) {
    }

    /** Those that a player played in the latest runs, the last first; at most so many. */
    public static List<Played> ofPlayer(Handle h, int player, int most) {
        return h.select("""
                SELECT d.id, d.name, d.terms FROM drill d JOIN (
                    SELECT drill_id, max(started_ms) AS last_ms FROM (
                        SELECT drill_id, started_ms FROM run WHERE player_id = ? AND drill_id IS NOT NULL
                        ORDER BY started_ms DESC LIMIT 500) AS latest
                    GROUP BY drill_id) AS played ON played.drill_id = d.id
                ORDER BY played.last_ms DESC, d.id LIMIT ?
                """, player, most).map((row, ctx) -> new Played(row.getInt(1), row.getString(2), row.getString(3))).list();
    }
}
