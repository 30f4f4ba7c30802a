package org.cupbeam.studio.store;

import java.util.List;
import java.util.Optional;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The studio's own drills. Each has a name of its own; what is taken off can be put back. */
public final class Shelf {
    /** The most drills. */
    public static final int MOST = 500;
    private static final Logger LOG = LoggerFactory.getLogger(Shelf.class);
    private static final String THERE = "SELECT id, terms, version, changed_by, changed_ms FROM shelf_drill "
            + "WHERE gone_ms IS NULL";

    /**
     * A drill on the shelf.
     *
     * @param version   counts its changes
     * @param changedBy who made it as it is
     * @param changedMs when, ms since 1970
     */
    public record Kept(int id, Drill drill, int version, String changedBy, long changedMs) {
    }

    /** Why nothing was changed. */
    public enum Objection {
        /** Another drill has that name. */
        NAME_TAKEN,
        /** Somebody has changed it in the meantime, or taken it off. */
        CHANGED_SINCE,
        /** There are {@link #MOST}. */
        FULL
    }

    /** What came of a change: the drill as it is now, or why it is as it was. */
    public record Change(Kept kept, Objection objection) {
        private static Change refused(Objection objection) {
            return new Change(null, objection);
        }
    }

    private Shelf() {
    }

    /** All of it, in order of names. */
    public static List<Kept> all(Handle h) {
        return h.createQuery(THERE + " ORDER BY name_key").map((row, ctx) -> kept(row.getInt(1), row.getString(2),
                row.getInt(3), row.getString(4), row.getLong(5))).list().stream().flatMap(Optional::stream).toList();
    }

    public static Optional<Kept> find(Handle h, int id) {
        return h.select(THERE + " AND id = ?", id).map((row, ctx) -> kept(row.getInt(1), row.getString(2),
                row.getInt(3), row.getString(4), row.getLong(5))).findOne().flatMap(each -> each);
    }

    /** Puts another one on. */
    public static Change add(Handle h, Drill drill, String by, long nowMs) {
        if (isTaken(h, drill.name(), 0)) {
            return Change.refused(Objection.NAME_TAKEN);
        }
        if (count(h) >= MOST) {
            return Change.refused(Objection.FULL);
        }
        int id = h.createQuery("SELECT coalesce(max(id), 0) + 1 FROM shelf_drill").mapTo(Integer.class).one();
        h.execute("INSERT INTO shelf_drill (id, name_key, terms, version, changed_by, changed_ms) VALUES (?, ?, ?, 1, ?, ?)",
                id, NameKey.of(drill.name()), DrillJson.text(drill), by, nowMs);
        return new Change(new Kept(id, drill, 1, by, nowMs), null);
    }

    /** Has a drill be another, where it still is as whoever asks knew it. */
    public static Change change(Handle h, int id, int version, Drill drill, String by, long nowMs) {
        if (isTaken(h, drill.name(), id)) {
            return Change.refused(Objection.NAME_TAKEN);
        }
        int changed = h.execute("UPDATE shelf_drill SET name_key = ?, terms = ?, version = version + 1, changed_by = ?, "
                        + "changed_ms = ? WHERE id = ? AND version = ? AND gone_ms IS NULL", NameKey.of(drill.name()),
                DrillJson.text(drill), by, nowMs, id, version);
        return changed == 1 ? new Change(new Kept(id, drill, version + 1, by, nowMs), null)
                : Change.refused(Objection.CHANGED_SINCE);
    }

    /** Takes one off, where it still is as whoever asks knew it. @return whether it was done */
    public static boolean takeOff(Handle h, int id, int version, long nowMs) {
        return h.execute("UPDATE shelf_drill SET gone_ms = ? WHERE id = ? AND version = ? AND gone_ms IS NULL", nowMs, id,
                version) == 1;
    }

    /** Puts back what was taken off. */
    public static Change putBack(Handle h, int id) {
        Optional<String> key = h.select("SELECT name_key FROM shelf_drill WHERE id = ? AND gone_ms IS NOT NULL", id)
                .mapTo(String.class).findOne();
        if (key.isEmpty()) {
            return Change.refused(Objection.CHANGED_SINCE);
        }
        if (isTaken(h, key.get(), id)) {
            return Change.refused(Objection.NAME_TAKEN);
        }
        if (count(h) >= MOST) {
            return Change.refused(Objection.FULL);
        }
        h.execute("UPDATE shelf_drill SET gone_ms = NULL WHERE id = ?", id);
        return new Change(find(h, id).orElseThrow(), null);
    }

    private static boolean isTaken(Handle h, String name, int exceptId) {
        return h.select("SELECT count(*) FROM shelf_drill WHERE name_key = ? AND id <> ? AND gone_ms IS NULL",
                NameKey.of(name), exceptId).mapTo(Integer.class).one() > 0;
    }

    private static int count(Handle h) {
        return h.createQuery("SELECT count(*) FROM shelf_drill WHERE gone_ms IS NULL").mapTo(Integer.class).one();
    }

    private static Optional<Kept> kept(int id, String terms, int version, String by, long atMs) {
        try {
            return Optional.of(new Kept(id, DrillJson.read(terms), version, by, atMs));
        } catch (BadMessage e) {
            LOG.warn("drill {} on the shelf is of a later version, and passed over: {}", id, e.getMessage());
            return Optional.empty();
        }
    }
}
