package org.cupbeam.studio.store;

import java.util.Optional;
import org.cupbeam.event.Data;
import org.cupbeam.studio.store.sums.PuttSums;
import org.cupbeam.studio.store.sums.RunDays;
import org.jdbi.v3.core.Handle;

/** Marks what no longer counts. The rows stay, and so does who said so. */
final class Corrections {
    private record Target(int id, Integer run, boolean counts) {
    }

    /** By whom last, why, and when, ms since 1970. */
    record Voided(String by, String reason, long atMs) {
    }

    private Corrections() {
    }

    static void apply(Handle h, Numbers numbers, Context at, Data.Correction correction) {
        h.execute("INSERT INTO correction (journal_id, sequence, of_sequence, what, by_whom, reason, at_ms) "
                        + "VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING", at.journal(), at.sequence(), correction.of(),
                Rows.word(correction.what()), correction.by(), correction.reason(), at.atMs());
        Optional<Target> target = h.select("SELECT id, run_id, counts FROM attempt WHERE journal_id = ? AND sequence = ?",
                at.journal(), correction.of()).map((row, ctx) -> new Target(row.getInt(1),
                row.getObject(2) == null ? null : row.getInt(2), row.getInt(3) == 1)).findOne();
        if (target.isEmpty()) {
            return;
        }
        boolean counted = target.get().counts();
        PuttSums.around(h, () -> h.execute("UPDATE attempt SET counts = 0 WHERE id = ?", target.get().id()), "id = ?", target.get().id());
        PuttsVersion.changedIn(h, target.get().id());
        Quarters.recount(h, target.get().id());
        if (correction.what() == Data.Correction.What.TAKEN_BACK && target.get().run() != null) {
            open(h, at, target.get().run(), correction.of());
        } else if (target.get().run() != null && endedBefore(h, target.get().run(), at.sequence())) {
            new Rescoring(h, numbers, target.get().run()).by(correction.by(), correction.reason(), at.atMs(), counted ? -1 : 0);
        }
    }

    /** An import may tell of an end that the lane's own events have yet to come to: they are taken out there. */
    private static boolean endedBefore(Handle h, int run, long sequence) {
        return h.select("SELECT 1 FROM run WHERE id = ? AND ended_sequence < ?", run, sequence).mapTo(Integer.class)
                .findOne().isPresent();
    }

    /** Whether putts of a run were voided while it went on, which its lane counts all the same. */
    static Optional<Voided> voided(Handle h, int run) {
        return h.select("""
                SELECT c.by_whom, c.reason, c.at_ms FROM attempt a JOIN correction c ON c.journal_id = a.journal_id
                    AND c.of_sequence = a.sequence AND c.what = 'voided' WHERE a.run_id = ? AND a.counts = 0
                UNION ALL SELECT m.by_whom, m.reason, m.at_ms FROM attempt a JOIN amendment m ON m.attempt_id = a.id
                    AND m.what = 'voided' WHERE a.run_id = ? AND a.counts = 0 ORDER BY 3 DESC LIMIT 1
                """, run, run).map((row, ctx) -> new Voided(row.getString(1), row.getString(2), row.getLong(3))).findOne();
    }

    /**
     * The attempt that ended a run is no more, so the run goes on, and so does its duel; an end after that, which an import
     * told of, stays.
     */
    private static void open(Handle h, Context at, int run, long ofSequence) {
        RunDays.changed(h, "id = ? OR duel_id = (SELECT duel_id FROM run WHERE id = ?)", run, run);
        h.execute("UPDATE run SET ended_sequence = NULL, ended_ms = NULL, ended_by = NULL, stations_cleared = NULL, "
                + "attempts = NULL, holed = NULL, mean_miss_mm = NULL WHERE journal_id = ? AND ended_sequence > ? "
                + "AND ended_sequence < ? AND (id = ? OR duel_id = (SELECT duel_id FROM run WHERE id = ?))", at.journal(),
                ofSequence, at.sequence(), run, run);
        h.execute("UPDATE duel SET ended_sequence = NULL, ended_ms = NULL, winner_id = NULL WHERE ended_sequence > ? "
                + "AND ended_sequence < ? AND id = (SELECT duel_id FROM run WHERE id = ?)", ofSequence, at.sequence(), run);
    }
}
