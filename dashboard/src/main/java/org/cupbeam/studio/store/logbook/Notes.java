package org.cupbeam.studio.store.logbook;

import java.util.List;
import org.cupbeam.studio.store.Sight;
import org.jdbi.v3.core.Handle;

/** Notes, the newest first; those withdrawn are in no list. */
public final class Notes {
    private Notes() {
    }

    /** On a player, on any of the player's runs, and on any attempt in these. */
    public static Page<NoteRow> ofPlayer(Handle h, Sight sight, int player, Cursor after, int limit) {
        int size = Page.bounded(limit);
        Where where = new Where().and("(n.player_id = ? "
                + "OR EXISTS (SELECT 1 FROM run r WHERE r.id = n.run_id AND r.player_id = ?) "
                + "OR EXISTS (SELECT 1 FROM attempt a WHERE a.id = n.attempt_id AND a.player_id = ?))", player, player,
                player).and(sight.note());
        if (after != null) {
            where.and("(n.at_ms, n.id) < (?, ?)", after.keys(2));
        }
        return Page.of(list(h, where.sql() + " ORDER BY n.at_ms DESC, n.id DESC LIMIT ?", where.values(size + 1)), size,
                note -> Cursor.of(note.atMs(), note.id()));
    }

    /** On a run, and on its attempts. */
    public static List<NoteRow> ofRun(Handle h, int run) {
        return list(h, "(n.run_id = ? OR n.attempt_id IN (SELECT id FROM attempt WHERE run_id = ?)) "
                + "ORDER BY n.at_ms DESC, n.id DESC LIMIT " + Page.MOST, run, run);
    }

    private static List<NoteRow> list(Handle h, String rest, Object... values) {
        return h.select(NoteRow.SELECT + rest, values).map((row, ctx) -> NoteRow.read(row)).list();
    }
}
