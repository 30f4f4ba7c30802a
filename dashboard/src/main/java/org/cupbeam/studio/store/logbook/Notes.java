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
        Where where = new Where().and("n.of_player = ?", player).and(sight.note());
        if (after != null) {
            where.and("(n.at_ms, n.id) < (?, ?)", after.keys(2));
        }
        return Page.of(list(h, where.sql() + " ORDER BY n.at_ms DESC, n.id DESC LIMIT ?", where.values(size + 1)), size,
                note -> Cursor.of(note.atMs(), note.id()));
    }

    /** On a run, and on its attempts. */
    public static List<NoteRow> ofRun(Handle h, int run) {
        return list(h, "n.id IN (SELECT id FROM note WHERE run_id = ? UNION SELECT m.id FROM attempt a "
                + "JOIN note m ON m.attempt_id = a.id WHERE a.run_id = ?) ORDER BY n.at_ms DESC, n.id DESC LIMIT " + Page.MOST, run, run);
    }

    private static List<NoteRow> list(Handle h, String rest, Object... values) {
        return h.select(NoteRow.SELECT + rest, values).map((row, ctx) -> NoteRow.read(row)).list();
    }
}
