package org.cupbeam.studio.store;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Putt;
import org.cupbeam.drill.Score;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Data;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.EventJson;
import org.cupbeam.studio.store.Amendments.Target;
import org.cupbeam.studio.store.Amendments.What;
import org.cupbeam.studio.store.sums.RunDays;
import org.jdbi.v3.core.Handle;

/**
 * Works a run's score out again once one of its putts counts no longer, or again: see {@link Rescore} for the rules. What
 * the score was before is in the trail, and what the lane made of it in its event. A run that goes on is left to its end.
 * Where the run cannot be played again (its beginning or putts of it never came), its score stays, and the trail says why.
 */
final class Rescoring {
    /** @param envelope of the event that ended it; null where that came by an import */
    private record Scored(String terms, Double limitMm, Integer duel, String endedBy, int attempts,
                          String envelope) {
    }

    private record Attempted(Integer station, boolean holed, double finishMm, double lowMm, boolean counts) {
    }

    private final Handle h;
    private final Numbers numbers;
    private final int run;

    Rescoring(Handle h, Numbers numbers, int run) {
        this.h = h;
        this.numbers = numbers;
        this.run = run;
    }

    /**
     * Does it, in somebody's name.
     *
     * @param change how many more putts count than before: -1, 0 or 1
     */
    void by(String name, String reason, long atMs, int change) {
        Optional<Scored> ended = scored();
        if (ended.isEmpty()) {
            return;
        }
        Scored was = ended.get();
        List<Attempted> putts = putts();
        String objection = objection(was, putts, change);
        if (objection != null) {
            note(What.NOT_RESCORED, null, objection, name, reason, atMs);
            return;
        }
        String before = said();
        Rescore now = Rescore.of(drill(was), was.limitMm(), putts.stream().filter(Attempted::counts)
                .map(each -> new Rescore.From(each.station(), Putt.of(each.holed(), each.finishMm(), each.lowMm()))).toList());
        String endedBy = now.endedBy().map(Rows::word).orElse(laneSaid(was).map(lane -> Rows.word(lane.endedBy()))
                .orElse(was.endedBy()));
        h.execute("UPDATE run SET stations_cleared = ?, attempts = ?, holed = ?, mean_miss_mm = ?, ended_by = ? WHERE id = ?",
                now.cleared(), now.attempts(), now.holed(), now.meanMissMm(), endedBy, run);
        RunDays.changed(h, "id = ?", run);
        if (was.duel() != null) {
            decide(was.duel());
        }
        String after = said();
        if (!after.equals(before)) {
            note(What.RESCORED, before, after + (now.beyond() == 0 ? "" : ", beyond " + now.beyond()), name, reason, atMs);
        }
    }

    private static String objection(Scored was, List<Attempted> putts, int change) {
        if (was.terms() == null || was.limitMm() == null) {
            return "the run's beginning never came, so its drill is not known";
        }
        if (drill(was) == null) {
            return "its drill is of a later version";
        }
        if (putts.stream().anyMatch(each -> each.station() == null)) {
            return "a putt of it came without its station";
        }
        Optional<Data.RunEnded> lane = laneSaid(was);
        if (lane.isPresent()) {
            int there = lane.get().attempts();
            return there == putts.size() ? null : "only " + putts.size() + " of its " + there + " putts ever came";
        }
        long counted = putts.stream().filter(Attempted::counts).count() - change;
        return putts.size() == was.attempts() || counted == was.attempts() ? null
                : "its " + was.attempts() + " putts did not all come by the import";
    }

    /** Null where it cannot be read. */
    private static Drill drill(Scored of) {
        try {
            return DrillJson.read(of.terms());
        } catch (BadMessage e) {
            return null;
        }
    }

    /** What the lane said at the run's end; empty where that came by an import. */
    private static Optional<Data.RunEnded> laneSaid(Scored of) {
        try {
            return of.envelope() != null && EventJson.decode(of.envelope().getBytes(StandardCharsets.UTF_8)).data()
                    instanceof Data.RunEnded ended ? Optional.of(ended) : Optional.empty();
        } catch (BadMessage e) {
            return Optional.empty();
        }
    }

    private Optional<Scored> scored() {
        return h.select("""
                SELECT d.terms, r.limit_mm, r.duel_id, r.ended_by, r.attempts, e.envelope FROM run r
                LEFT JOIN drill d ON d.id = r.drill_id LEFT JOIN event e ON e.journal_id = r.journal_id AND e.sequence = r.ended_sequence
                WHERE r.id = ? AND r.stations_cleared IS NOT NULL
                """, run).map((row, ctx) -> new Scored(row.getString(1), number(row.getObject(2)),
                whole(row.getObject(3)), row.getString(4), row.getInt(5), row.getString(6))).findOne();
    }

    /** All but those taken back, which the lane played on without. */
    private List<Attempted> putts() {
        return h.select("""
                SELECT a.station, a.holed, a.finish_mm, a.finish_low_mm, a.counts FROM attempt a WHERE a.run_id = ?
                AND NOT EXISTS (SELECT 1 FROM correction c WHERE c.journal_id = a.journal_id AND c.of_sequence = a.sequence
                    AND c.what = 'taken-back')
                ORDER BY a.sequence
                """, run).map((row, ctx) -> new Attempted(whole(row.getObject(1)), row.getInt(2) != 0,
                orNaN(row.getObject(3)), orNaN(row.getObject(4)), row.getInt(5) != 0)).list();
    }

    /** The duel goes to whose score is the best now, or to nobody where that is shared; one that goes on stays open. */
    private void decide(int duel) {
        record Side(int player, Score score) {
        }
        List<Side> sides = h.select("SELECT player_id, stations_cleared, attempts, holed, mean_miss_mm FROM run "
                + "WHERE duel_id = ? AND stations_cleared IS NOT NULL", duel).map((row, ctx) -> new Side(row.getInt(1),
                new Score(row.getInt(2), row.getInt(3), row.getInt(3) == row.getInt(4) ? 0
                        : row.getObject(5) == null ? Double.POSITIVE_INFINITY : row.getDouble(5)))).list();
        Optional<Score> best = sides.stream().map(Side::score).min(Score::compareTo);
        List<Side> first = sides.stream().filter(each -> each.score().compareTo(best.orElseThrow()) == 0).toList();
        h.execute("UPDATE duel SET winner_id = ? WHERE id = ? AND ended_ms IS NOT NULL",
                sides.size() > 1 && first.size() == 1 ? first.get(0).player() : null, duel);
    }

    /** The score as the trail keeps it: no names, so that it can stay when one is forgotten. */
    private String said() {
        return h.select("""
                SELECT 'cleared ' || r.stations_cleared || ', attempts ' || r.attempts || ', holed ' || r.holed
                    || coalesce(', mean miss ' || CAST(CAST(round(r.mean_miss_mm) AS INTEGER) AS TEXT) || ' mm', '')
                    || coalesce(', ' || r.ended_by, '') || CASE WHEN u.winner_id = r.player_id THEN ', won'
                    WHEN u.winner_id IS NOT NULL THEN ', lost' ELSE '' END
                FROM run r LEFT JOIN duel u ON u.id = r.duel_id WHERE r.id = ?
                """, run).mapTo(String.class).one();
    }

    private void note(What what, String was, String became, String name, String reason, long atMs) {
        boolean known = h.select("SELECT 1 FROM amendment WHERE run_id = ? AND what = ? AND at_ms = ? AND coalesce(was, '') = ? "
                + "AND became = ?", run, what.word(), atMs, was == null ? "" : was, became).mapTo(Integer.class).findFirst().isPresent();
        if (!known) { // an import may have brought it
            Amendments.note(h, numbers.next(h, "amendment"), what, Target.run(run), was, became, name, reason, atMs);
        }
    }

    private static Integer whole(Object valueOrNull) {
        return valueOrNull == null ? null : ((Number) valueOrNull).intValue();
    }

    private static Double number(Object valueOrNull) {
        return valueOrNull == null ? null : ((Number) valueOrNull).doubleValue();
    }

    private static double orNaN(Object valueOrNull) {
        return valueOrNull == null ? Double.NaN : ((Number) valueOrNull).doubleValue();
    }
}
