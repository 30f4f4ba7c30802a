package org.cupbeam.studio.store;

import java.util.NoSuchElementException;
import org.cupbeam.studio.store.sums.Whose;
import org.jdbi.v3.core.Handle;

/** Writes a coach's notes. */
public final class NoteBook {
    /** The longest note, in characters. */
    public static final int LONGEST = 4_000;

    private final Store store;

    public NoteBook(Store store) {
        this.store = store;
    }

    /** @return the note's number */
    public int onPlayer(int player, String words, Who author) {
        return onPlayer(player, words, Scope.ALL, author);
    }

    /** The same by somebody who looks after some studios. @return the note's number */
    public int onPlayer(int player, String words, Scope scope, Who author) {
        return write("player", player, words, scope, author);
    }

    /** @return the note's number */
    public int onRun(int run, String words, Who author) {
        return write("run", run, words, Scope.ALL, author);
    }

    /** @return the note's number */
    public int onAttempt(int attempt, String words, Who author) {
        return write("attempt", attempt, words, Scope.ALL, author);
    }

    /** Shows a note no longer; it stays in the record, with who withdrew it. */
    public void withdraw(int note, Who by) {
        int changed = store.write(h -> h.execute("UPDATE note SET withdrawn_ms = ?, withdrawn_by = ? WHERE id = ? "
                + "AND withdrawn_ms IS NULL", by.atMs(), by.name(), note));
        if (changed == 0) {
            throw new NoSuchElementException("there is no note " + note);
        }
    }

    private int write(String table, int id, String words, Scope scope, Who author) {
        String text = Texts.lines("note", words, LONGEST);
        return store.write(h -> {
            if (h.select("SELECT 1 FROM " + table + " WHERE id = ?", id).mapTo(Integer.class).findOne().isEmpty()) {
                throw new NoSuchElementException("there is no " + table + " " + id);
            }
            return insert(h, table, id, text, scope, author);
        });
    }

    private int insert(Handle h, String table, int id, String text, Scope scope, Who author) {
        int note = store.next(h, "note");
        h.execute("INSERT INTO note (id, " + table + "_id, author, words, at_ms, studios) VALUES (?, ?, ?, ?, ?, ?)", note,
                id, author.name(), text, author.atMs(), scope.text());
        Whose.note(h, note);
        return note;
    }
}
