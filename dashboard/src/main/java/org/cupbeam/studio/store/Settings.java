package org.cupbeam.studio.store;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** What somebody has set, by name. */
public final class Settings {
    /** The longest value, in characters. */
    public static final int LONGEST = 4_000;

    private Settings() {
    }

    public static Optional<String> get(Handle h, String name) {
        return h.select("SELECT value FROM setting WHERE name = ?", name).mapTo(String.class).findOne();
    }

    /** All whose names begin so, by the rest of their names. */
    public static Map<String, String> startingWith(Handle h, String prefix) {
        return h.select("SELECT substr(name, ?), value FROM setting WHERE substr(name, 1, ?) = ?", prefix.length() + 1,
                prefix.length(), prefix).reduceRows(new HashMap<>(), (all, row) -> {
                    all.put(row.getColumn(1, String.class), row.getColumn(2, String.class));
                    return all;
                });
    }

    /**
     * Sets a value in place of any before.
     *
     * @param atMs now
     */
    public static void set(Handle h, String name, String value, long atMs) {
        if (value.length() > LONGEST) {
            throw new IllegalArgumentException("setting " + name + " has " + value.length() + " characters; at most "
                    + LONGEST + " are kept");
        }
        h.execute("INSERT INTO setting (name, value, set_ms) VALUES (?, ?, ?) ON CONFLICT (name) DO UPDATE SET "
                + "value = excluded.value, set_ms = excluded.set_ms", name, value, atMs);
    }

    /** Goes back to what holds where nothing is set. */
    public static void clear(Handle h, String name) {
        h.execute("DELETE FROM setting WHERE name = ?", name);
    }
}
