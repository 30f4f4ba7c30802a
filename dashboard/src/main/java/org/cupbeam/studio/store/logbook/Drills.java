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
}
