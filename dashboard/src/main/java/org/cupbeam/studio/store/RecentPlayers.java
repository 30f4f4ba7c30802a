package org.cupbeam.studio.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/** The names of players, for whoever sets up the next game. */
public final class RecentPlayers {
    private RecentPlayers() {
    }

    /** Those who played last come first; who has been forgotten is not among them. */
    public static List<String> of(Handle h, Sight sight, int most) {
        if (!sight.isAll()) {
            return h.select("SELECT p.name FROM player p LEFT JOIN (SELECT player_id, max(started_ms) AS seen_ms FROM run r WHERE "
                    + sight.lane("r.lane_id") + " GROUP BY player_id) AS here ON here.player_id = p.id WHERE p.name IS NOT NULL AND "
                    + "(here.player_id IS NOT NULL OR p.id IN (SELECT player_id FROM player_made WHERE " + sight.scope().named("studio")
                    + ")) ORDER BY coalesce(here.seen_ms, p.created_ms) DESC, p.name LIMIT ?", most).mapTo(String.class).list();
        }
        return h.select("""
                SELECT name FROM (
                    SELECT p.name, coalesce((SELECT max(r.started_ms) FROM run r WHERE r.player_id = p.id),
                        p.created_ms) AS seen_ms FROM player p WHERE p.name IS NOT NULL) seen
                ORDER BY seen_ms DESC, name LIMIT ?
                """, most).mapTo(String.class).list();
    }
}
