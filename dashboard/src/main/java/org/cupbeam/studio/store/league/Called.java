package org.cupbeam.studio.store.league;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** What players are called. */
public final class Called {
    private Called() {
    }

    /** Those of some players who have a name; whoever has been forgotten has none. */
    public static Map<Integer, String> of(Handle h, Set<Integer> players) {
        Map<Integer, String> names = new HashMap<>();
        if (!players.isEmpty()) { // numbers of ours, and more of them than there may be parameters
            h.createQuery("SELECT id, name FROM player WHERE name IS NOT NULL AND id IN (" + players.stream().map(String::valueOf)
                    .collect(Collectors.joining(", ")) + ")").map((row, ctx) -> names.put(row.getInt(1), row.getString(2))).list();
        }
        return names;
    }
}
