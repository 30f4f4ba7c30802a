package org.cupbeam.studio.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The studios' own drills. What somebody who looks after some of the studios puts on is seen there; what somebody of all, everywhere,
 * to be changed by such alone. Among those that anybody sees each has a name of its own; what is taken off can be put back.
 */
public final class Shelf {
    /** The most drills. */
    public static final int MOST = 500;
    private static final Logger LOG = LoggerFactory.getLogger(Shelf.class);
    private static final String THERE = "SELECT id, terms, version, changed_by, changed_ms, studios FROM shelf_drill "
            + "WHERE gone_ms IS NULL";
    private static final String GONE = THERE.replace("IS NULL", "IS NOT NULL");

    /**
     * A drill on the shelf.
     *
     * @param version   counts its changes
     * @param changedBy who made it as it is
     * @param changedMs when, ms since 1970
     * @param scope     for which studios
     */
    public record Kept(int id, Drill drill, int version, String changedBy, long changedMs, Scope scope) {
        private boolean isSeen(Scope by) {
            return scope.isAll() || by.isAll() || scope.studios().stream().anyMatch(by::includes);
        }
    }

    /** Why nothing was changed. */
    public enum Objection {
        /** Another drill has that name. */
        NAME_TAKEN,
        /** Somebody has changed it in the meantime, or taken it off. */
        CHANGED_SINCE,
        /** It is for all studios, and whoever asks looks after some. */
        NOT_YOURS,
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
        return all(h, Scope.ALL);
    }

    /** What is seen of it, in order of names. */
    public static List<Kept> all(Handle h, Scope by) {
        return h.createQuery(THERE + " ORDER BY name_key, id").map((row, ctx) -> kept(row)).list().stream().flatMap(Optional::stream)
                .filter(each -> each.isSeen(by)).toList();
    }

    public static Optional<Kept> find(Handle h, int id) {
        return h.select(THERE + " AND id = ?", id).map((row, ctx) -> kept(row)).findOne().flatMap(each -> each);
    }

    public static Optional<Kept> find(Handle h, Scope by, int id) {
        return find(h, id).filter(each -> each.isSeen(by));
    }

    /** Puts another one on. */
    public static Change add(Handle h, Drill drill, String by, long nowMs) {
        return add(h, Scope.ALL, drill, by, nowMs);
    }

    /** The same, for some studios. */
    public static Change add(Handle h, Scope scope, Drill drill, String by, long nowMs) {
        if (isTaken(h, scope, drill.name(), 0)) {
            return Change.refused(Objection.NAME_TAKEN);
        }
        if (count(h) >= MOST) {
            return Change.refused(Objection.FULL);
        }
        int id = h.createQuery("SELECT coalesce(max(id), 0) + 1 FROM shelf_drill").mapTo(Integer.class).one();
        h.execute("INSERT INTO shelf_drill (id, name_key, terms, version, changed_by, changed_ms, studios) VALUES (?, ?, ?, 1, ?, ?, ?)",
                id, NameKey.of(drill.name()), DrillJson.text(drill), by, nowMs, scope.text());
        return new Change(new Kept(id, drill, 1, by, nowMs, scope), null);
    }

    /** Has a drill be another, where it still is as whoever asks knew it. */
    public static Change change(Handle h, int id, int version, Drill drill, String by, long nowMs) {
        return change(h, Scope.ALL, id, version, drill, by, nowMs);
    }

    /** The same by somebody who looks after some studios. */
    public static Change change(Handle h, Scope scope, int id, int version, Drill drill, String by, long nowMs) {
        Optional<Objection> objection = objection(h, scope, id);
        if (objection.isPresent()) {
            return Change.refused(objection.get());
        }
        Kept was = find(h, id).orElseThrow();
        if (isTaken(h, was.scope(), drill.name(), id)) {
            return Change.refused(Objection.NAME_TAKEN);
        }
        int changed = h.execute("UPDATE shelf_drill SET name_key = ?, terms = ?, version = version + 1, changed_by = ?, "
                        + "changed_ms = ? WHERE id = ? AND version = ? AND gone_ms IS NULL", NameKey.of(drill.name()),
                DrillJson.text(drill), by, nowMs, id, version);
        return changed == 1 ? new Change(new Kept(id, drill, version + 1, by, nowMs, was.scope()), null)
                : Change.refused(Objection.CHANGED_SINCE);
    }

    /** Why somebody may not change one that is there; empty where they may. */
    public static Optional<Objection> objection(Handle h, Scope by, int id) {
        Optional<Kept> there = find(h, by, id);
        return there.isEmpty() ? Optional.of(Objection.CHANGED_SINCE)
                : there.get().scope().isAll() && !by.isAll() ? Optional.of(Objection.NOT_YOURS) : Optional.empty();
    }

    /** Takes one off, where it still is as whoever asks knew it. @return whether it was done */
    public static boolean takeOff(Handle h, int id, int version, long nowMs) {
        return h.execute("UPDATE shelf_drill SET gone_ms = ? WHERE id = ? AND version = ? AND gone_ms IS NULL", nowMs, id,
                version) == 1;
    }

    /** Puts back what was taken off. */
    public static Change putBack(Handle h, int id) {
        return putBack(h, Scope.ALL, id);
    }

    /** The same by somebody who looks after some studios: what was theirs. */
    public static Change putBack(Handle h, Scope by, int id) {
        Optional<Kept> gone = h.select(GONE + " AND id = ?", id).map((row, ctx) -> kept(row)).findOne().flatMap(each -> each)
                .filter(each -> each.isSeen(by) && (by.isAll() || !each.scope().isAll()));
        if (gone.isEmpty()) {
            return Change.refused(Objection.CHANGED_SINCE);
        }
        if (isTaken(h, gone.get().scope(), gone.get().drill().name(), id)) {
            return Change.refused(Objection.NAME_TAKEN);
        }
        if (count(h) >= MOST) {
            return Change.refused(Objection.FULL);
        }
        h.execute("UPDATE shelf_drill SET gone_ms = NULL WHERE id = ?", id);
        return new Change(find(h, id).orElseThrow(), null);
    }

    /** Whether whoever sees the one sees another of that name. */
    private static boolean isTaken(Handle h, Scope scope, String name, int exceptId) {
        String key = NameKey.of(name);
        return all(h, scope).stream().anyMatch(each -> each.id() != exceptId && NameKey.of(each.drill().name()).equals(key));
    }

    private static int count(Handle h) {
        return h.createQuery("SELECT count(*) FROM shelf_drill WHERE gone_ms IS NULL").mapTo(Integer.class).one();
    }

    private static Optional<Kept> kept(ResultSet row) throws SQLException {
        try {
            return Optional.of(new Kept(row.getInt(1), DrillJson.read(row.getString(2)), row.getInt(3), row.getString(4), row.getLong(5),
                    Scope.parse(row.getString(6))));
        } catch (BadMessage e) {
            LOG.warn("drill {} on the shelf is of a later version, and passed over: {}", row.getInt(1), e.getMessage());
            return Optional.empty();
        }
    }
}
