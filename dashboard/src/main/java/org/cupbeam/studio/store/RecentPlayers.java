package org.cupbeam.studio.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/** The names of players, for whoever sets up the next game. */
public final class RecentPlayers {
    private RecentPlayers() {
    }

    /** Those who played last come first; who has been forgotten is not among them. */
    public static List<String> of(Handle h, int most) {
        return h.select("""
                SELECT name FROM (
                    SELECT p.name, coalesce((SELECT max(r.started_ms) FROM run r WHERE r.player_id = p.id),
                        p.created_ms) AS seen_ms FROM player p WHERE p.name IS NOT NULL) seen
                ORDER BY seen_ms DESC, name LIMIT ?
                """, most).mapTo(String.class).list();
    }
}
