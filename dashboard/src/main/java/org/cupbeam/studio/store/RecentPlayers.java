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
            return h.select("SELECT p.name FROM player p LEFT JOIN (SELECT player_id, max(last_ms) AS seen_ms FROM player_tally t WHERE "
                    + sight.studio("t.studio_id") + " GROUP BY player_id) AS here ON here.player_id = p.id WHERE p.name IS NOT NULL AND "
                    + "(here.player_id IS NOT NULL OR p.id IN (SELECT player_id FROM player_made WHERE " + sight.scope().named("studio")
                    + ")) ORDER BY coalesce(here.seen_ms, p.created_ms) DESC, p.name LIMIT ?", most).mapTo(String.class).list();
        }
        return h.select("""
                SELECT name FROM (
                    SELECT * FROM (SELECT p.name, t.last_ms AS seen_ms FROM player_tally t JOIN player p ON p.id = t.player_id
                        WHERE p.name IS NOT NULL AND NOT EXISTS (SELECT 1 FROM player_tally o WHERE o.player_id = t.player_id
                            AND (o.last_ms, o.studio_id) > (t.last_ms, t.studio_id))
                        ORDER BY t.last_ms DESC, p.name LIMIT ?) AS played
                    UNION ALL SELECT * FROM (SELECT p.name, p.created_ms AS seen_ms FROM player p
                        WHERE p.name IS NOT NULL AND NOT EXISTS (SELECT 1 FROM player_tally t WHERE t.player_id = p.id)
                        ORDER BY p.created_ms DESC, p.name LIMIT ?) AS entered) AS seen
                ORDER BY seen_ms DESC, name LIMIT ?
                """, most, most, most).mapTo(String.class).list();
    }
}
