package org.cupbeam.studio.store.logbook;

import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * A run putt by putt, and all that is said of it.
 *
 * @param putts   from the first to the last, those that do not count included
 * @param duel    every run of its duel in the order of play, this one among them; empty outside one
 * @param changes of the run and its putts, the newest first
 * @param notes   on the run and its putts, the newest first
 */
public record RunStory(RunRow run, List<AttemptRow> putts, List<RunRow> duel, List<Change> changes, List<NoteRow> notes) {
    public RunStory {
        putts = List.copyOf(putts);
        duel = List.copyOf(duel);
        changes = List.copyOf(changes);
        notes = List.copyOf(notes);
    }

    /** The story of a run; empty where there is no such run. */
    public static Optional<RunStory> of(Handle h, int run) {
        return Runs.one(h, run).map(row -> new RunStory(row, Attempts.ofRun(h, run),
                row.duel() == null ? List.of() : Runs.ofDuel(h, row.duel()), Trail.ofRun(h, run), Notes.ofRun(h, run)));
    }
}
