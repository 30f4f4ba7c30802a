package org.cupbeam.studio.store;

import java.util.List;
import java.util.Optional;
import org.cupbeam.event.Data;
import org.cupbeam.event.Words;
import org.jdbi.v3.core.Handle;

/** What later events have made of one that is entered after them. */
final class Afterwards {
    private record Undoing(long sequence, String what, String by, String reason, long atMs) {
    }

    private final Numbers numbers;

    Afterwards(Numbers numbers) {
        this.numbers = numbers;
    }

    /** Whether a putt from before the end of a run or a duel has been taken back since, so that the end did not hold. */
    boolean undid(Handle h, Context at, Data data) {
        String run = data instanceof Data.RunEnded ended ? ended.of().run() : null;
        String duel = data instanceof Data.DuelEnded ended ? ended.duel() : data instanceof Data.RunEnded ended ? ended.of().duel() : null;
        return (run != null || duel != null) && h.select("""
                SELECT 1 FROM correction c JOIN attempt a ON a.journal_id = c.journal_id AND a.sequence = c.of_sequence
                JOIN run r ON r.id = a.run_id LEFT JOIN duel d ON d.id = r.duel_id
                WHERE c.journal_id = ? AND c.what = 'taken-back' AND c.sequence > ? AND c.of_sequence < ? AND (r.name = ? OR d.name = ?)
                """, at.journal(), at.sequence(), at.sequence(), run, duel).mapTo(Integer.class).findFirst().isPresent();
    }

    /** Does to it what was done since, in its absence. */
    void follow(Handle h, Context at, Data data) {
        if (data instanceof Data.Attempt) {
            undoings(h, at).forEach(each -> Corrections.apply(h, numbers, new Context(at.journal(), at.lane(), each.sequence(),
                    new Boots.When(at.when().boot(), each.atMs(), 1)), new Data.Correction(data.stamp(),
                    Words.find(Data.Correction.What.class, each.what()), at.sequence(), each.by(), each.reason())));
            runOf(h, at, at.sequence()).ifPresent(run -> rescore(h, run));
        } else if (data instanceof Data.Correction correction) {
            runOf(h, at, correction.of()).ifPresent(run -> rescore(h, run));
        } else if (data instanceof Data.RunStarted started) {
            run(h, "SELECT id FROM run WHERE journal_id = ? AND name = ?", at.journal(), started.of().run()).ifPresent(run -> {
                h.execute("UPDATE attempt SET drill_id = (SELECT drill_id FROM run WHERE id = ?) WHERE run_id = ? AND drill_id IS NULL",
                        run, run);
                rescore(h, run);
            });
        }
    }

    private static Optional<Integer> runOf(Handle h, Context at, long attempt) {
        return run(h, "SELECT run_id FROM attempt WHERE journal_id = ? AND sequence = ? AND run_id IS NOT NULL", at.journal(), attempt);
    }

    private static Optional<Integer> run(Handle h, String sql, Object... values) {
        return h.select(sql, values).mapTo(Integer.class).findOne();
    }

    private static List<Undoing> undoings(Handle h, Context at) {
        return h.select("SELECT sequence, what, by_whom, reason, at_ms FROM correction WHERE journal_id = ? AND of_sequence = ? "
                + "ORDER BY sequence", at.journal(), at.sequence()).map((row, ctx) -> new Undoing(row.getLong(1), row.getString(2),
                row.getString(3), row.getString(4), row.getLong(5))).list();
    }

    /** Some of its putts were voided, and for want of this event it could not be scored anew. */
    private void rescore(Handle h, int run) {
        if (run(h, "SELECT id FROM run WHERE id = ? AND ended_sequence IS NOT NULL", run).isPresent()) {
            Corrections.voided(h, run).ifPresent(last -> new Rescoring(h, numbers, run).by(last.by(), last.reason(), last.atMs(), 0));
        }
    }
}
