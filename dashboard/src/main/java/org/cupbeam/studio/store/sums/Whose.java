package org.cupbeam.studio.store.sums;

import org.jdbi.v3.core.Handle;

/** Keeps whom notes and changes are about: the player they name, or whose the run or the attempt is. */
public final class Whose {
    private static final String WHOSE = "UPDATE %s SET of_player = coalesce(player_id, (SELECT r.player_id FROM run r WHERE r.id = run_id), "
            + "(SELECT a.player_id FROM attempt a WHERE a.id = attempt_id)) WHERE ";

    private Whose() {
    }

    /** A note has been added, or now names another player. */
    public static void note(Handle h, int id) {
        h.execute(WHOSE.formatted("note") + "id = ?", id);
    }

    /** A change has been noted. */
    public static void change(Handle h, int id) {
        h.execute(WHOSE.formatted("amendment") + "id = ?", id);
    }

    /** A run, and with it its attempts, is another player's now. */
    public static void run(Handle h, int run) {
        for (String table : new String[] {"note", "amendment"}) {
            h.execute(WHOSE.formatted(table) + "run_id = ?", run);
            h.execute(WHOSE.formatted(table) + "attempt_id IN (SELECT id FROM attempt WHERE run_id = ?)", run);
        }
    }
}
