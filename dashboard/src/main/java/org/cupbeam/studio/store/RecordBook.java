package org.cupbeam.studio.store;

import java.util.NoSuchElementException;
import org.cupbeam.studio.store.Amendments.Target;
import org.cupbeam.studio.store.Amendments.What;
import org.cupbeam.studio.store.sums.PuttSums;
import org.cupbeam.studio.store.sums.RunSums;
import org.cupbeam.studio.store.sums.Whose;
import org.jdbi.v3.core.Handle;

/**
 * Puts the record right afterwards. The events stay as they came, and each change says who, when and what it was before.
 * What is refused is refused with an {@link IllegalArgumentException} that says why, what is not there with a
 * {@link NoSuchElementException}.
 */
public final class RecordBook {
    private record Attempt(int id, Integer run, boolean counts, boolean takenBack) {
    }

    private final Store store;

    public RecordBook(Store store) {
        this.store = store;
    }

    /** An attempt is not to count. Its run's score is worked out again, as {@link Rescore} has it. */
    public void voids(int attempt, Who who) {
        store.writing(h -> {
            Attempt is = attempt(h, attempt);
            require(is.counts(), "the attempt does not count already");
            count(h, is, 0);
            Amendments.note(h, store, What.VOIDED, Target.attempt(attempt), null, null, who);
            rescore(h, is, who, -1);
        });
    }

    /** A voided attempt is to count again; one that was taken back cannot, since play went on without it. */
    public void restores(int attempt, Who who) {
        store.writing(h -> {
            Attempt is = attempt(h, attempt);
            require(!is.counts(), "the attempt counts already");
            require(!is.takenBack(), "the attempt was taken back at the lane, and play went on without it");
            count(h, is, 1);
            Amendments.note(h, store, What.RESTORED, Target.attempt(attempt), null, null, who);
            rescore(h, is, who, 1);
        });
    }

    /** A run was somebody else's; its attempts and the duel that it won go with it. */
    public void reassigns(int run, int toPlayer, Who who) {
        store.writing(h -> {
            require(h.select("SELECT 1 FROM player WHERE id = ? AND name_key IS NOT NULL", toPlayer).mapTo(Integer.class)
                    .findOne().isPresent(), "player " + toPlayer + " is nobody; give one who is listed");
            RunSums.around(h, () -> PuttSums.around(h, () -> reassign(h, store, run, toPlayer, who), "run_id = ?", run), "id = ?", run);
            store.forget();
        });
    }

    /** Something was taken in from a file. */
    public void imported(String what, Who who) {
        store.writing(h -> Amendments.note(h, store, What.IMPORTED, Target.NOTHING, null, what, who));
    }

    /** Within {@link RunSums#around} and {@link PuttSums#around}. */
    static void reassign(Handle h, Store store, int run, int toPlayer, Who who) {
        int from = h.select("SELECT player_id FROM run WHERE id = ?", run).mapTo(Integer.class).findOne()
                .orElseThrow(() -> new NoSuchElementException("there is no run " + run));
        require(from != toPlayer, "the run is that player's already");
        h.execute("UPDATE run SET player_id = ? WHERE id = ?", toPlayer, run);
        h.execute("UPDATE attempt SET player_id = ? WHERE run_id = ?", toPlayer, run);
        PuttsVersion.changed(h, from);
        PuttsVersion.changed(h, toPlayer);
        h.execute("UPDATE duel SET winner_id = ? WHERE winner_id = ? AND id = (SELECT duel_id FROM run WHERE id = ?)",
                toPlayer, from, run);
        Whose.run(h, run);
        Amendments.note(h, store, What.REASSIGNED, Target.run(run), Integer.toString(from), Integer.toString(toPlayer), who);
    }

    private static Attempt attempt(Handle h, int id) {
        return h.select("""
                SELECT a.run_id, a.counts, EXISTS (SELECT 1 FROM correction c WHERE c.journal_id = a.journal_id
                    AND c.of_sequence = a.sequence AND c.what = 'taken-back')
                FROM attempt a WHERE a.id = ?""", id).map((row, ctx) -> new Attempt(id, row.getObject(1) == null ? null : row.getInt(1),
                row.getInt(2) != 0, row.getBoolean(3))).findOne()
                .orElseThrow(() -> new NoSuchElementException("there is no attempt " + id));
    }

    private void rescore(Handle h, Attempt attempt, Who who, int change) {
        if (attempt.run() != null) {
            new Rescoring(h, store.numbers(), attempt.run()).by(who.name(), who.reason(), who.atMs(), change);
        }
    }

    private static void count(Handle h, Attempt attempt, int counts) {
        PuttSums.around(h, () -> h.execute("UPDATE attempt SET counts = ? WHERE id = ?", counts, attempt.id()), "id = ?", attempt.id());
        PuttsVersion.changedIn(h, attempt.id());
        Quarters.recount(h, attempt.id());
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
