package org.cupbeam.studio.store.logbook;

import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.store.NameKey;
import org.cupbeam.studio.store.Sight;
import org.jdbi.v3.core.Handle;

/** Players: by name, or by who was here last. Those who were forgotten, or turned out to be another, are in no list. */
public final class Players {
    private static final String LISTED = " WHERE p.name_key IS NOT NULL";

    private Players() {
    }

    /**
     * A page of players by name.
     *
     * @param search what the name contains, whatever its case; empty for everybody
     * @param after  the last page's end; null for the first
     * @param limit  rows, 1 to {@link Page#MOST}
     */
    public static Page<PlayerRow> byName(Handle h, Sight sight, String search, Cursor after, int limit) {
        int size = Page.bounded(limit);
        Where where = called(sight, search);
        if (after != null) {
            where.and("(p.name_key, p.id) > ((SELECT name_key FROM player WHERE id = ?), ?)", after.keys(1)[0],
                    after.keys(1)[0]);
        }
        return Page.of(list(h, sight, LISTED + " AND " + where.sql() + " ORDER BY p.name_key, p.id LIMIT ?",
                where.values(size + 1)), size, player -> Cursor.of(player.id()));
    }

    /** How many there are whose name contains that; empty for everybody. */
    public static int count(Handle h, Sight sight, String search) {
        Where where = called(sight, search);
        return h.select("SELECT count(*) FROM player p" + LISTED + " AND " + where.sql(), where.values())
                .mapTo(Integer.class).one();
    }

    private static Where called(Sight sight, String search) {
        Where where = new Where().and(sight.player("p.id"));
        if (!search.isBlank()) {
            where.and("p.name_key LIKE ? ESCAPE '!'", "%" + NameKey.of(search).replaceAll("([!%_])", "!$1") + "%");
        }
        return where;
    }

    /** Who began a run last, the latest first. */
    public static List<PlayerRow> latest(Handle h, Sight sight, int limit) {
        return list(h, sight, " JOIN player_tally here ON here.player_id = p.id" + LISTED + " AND " + sight.studio("here.studio_id")
                + " AND NOT EXISTS (SELECT 1 FROM player_tally o WHERE o.player_id = here.player_id AND " + sight.studio("o.studio_id")
                + " AND (o.last_ms, o.studio_id) > (here.last_ms, here.studio_id)) "
                + "ORDER BY here.last_ms DESC, p.id DESC LIMIT ?", Page.bounded(limit));
    }

    /** One player by number, forgotten or not. */
    public static Optional<PlayerRow> one(Handle h, Sight sight, int id) {
        return list(h, sight, " WHERE p.id = ? AND " + sight.player("p.id"), id).stream().findFirst();
    }

    /** Who is called so, or was. */
    public static Optional<PlayerRow> named(Handle h, Sight sight, String name) {
        String key = NameKey.of(name);
        return list(h, sight, " WHERE (p.name_key = ? OR p.id = (SELECT player_id FROM player_alias WHERE name_key = ?)) AND "
                + sight.player("p.id") + " ORDER BY p.name_key = ? DESC LIMIT 1", key, key, key).stream().findFirst();
    }

    private static List<PlayerRow> list(Handle h, Sight sight, String rest, Object... values) {
        return h.select(PlayerRow.select(sight) + rest, values).map((row, ctx) -> PlayerRow.read(row)).list();
    }
}
