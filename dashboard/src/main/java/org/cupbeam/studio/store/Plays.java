package org.cupbeam.studio.store;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.cupbeam.event.Data;
import org.cupbeam.event.Play;
import org.cupbeam.studio.store.sums.RunDays;
import org.cupbeam.studio.store.sums.RunSums;
import org.jdbi.v3.core.Handle;

/** What events say about runs and duels. */
final class Plays {
    /** A run's row, as far as its attempts need it. */
    record Run(int id, int player, Integer drill) {
    }

    private static final int MOST_REMEMBERED = 2_000;

    private final Names names;
    private final Numbers numbers;
    private final Map<List<Object>, Run> remembered = new LinkedHashMap<>();

    Plays(Names names, Numbers numbers) {
        this.names = names;
        this.numbers = numbers;
    }

    void forget() {
        remembered.clear();
    }

    void started(Handle h, Context at, Data.RunStarted run) {
        boolean known = known(h, at, run.of()).isPresent();
        int id = run(h, at, run.of()).id();
        if (known) { // by a putt that came without it, or by an import
            RunSums.around(h, () -> began(h, at, run, id), "id = ?", id);
        } else {
            began(h, at, run, id);
        }
        remembered.remove(List.<Object>of(at.journal(), run.of().run()));
    }

    private void began(Handle h, Context at, Data.RunStarted run, int id) {
        int drill = names.drill(h, run.drill());
        h.execute("UPDATE run SET drill_id = ?, play_order = ?, breaks = ?, slope = ?, limit_mm = ?, "
                        + "started_sequence = ?, started_ms = ? WHERE id = ?", drill, run.of().order(),
                Rows.word(run.tags().breaks()), Rows.word(run.tags().slope()), Rows.orNull(run.limitMm()),
                at.sequence(), at.atMs(), id);
    }

    /** @return the run's number; empty where an import has told of this end, or a later one, already */
    OptionalInt ended(Handle h, Context at, Data.RunEnded run) {
        int id = run(h, at, run.of()).id();
        int changed = h.execute("UPDATE run SET ended_sequence = ?, ended_ms = ?, ended_by = ?, stations_cleared = ?, attempts = ?, "
                        + "holed = ?, mean_miss_mm = ? WHERE id = ? AND (ended_sequence IS NULL OR ended_sequence < ?)", at.sequence(), at.atMs(),
                Rows.word(run.endedBy()), run.stationsCleared(), run.attempts(), run.holed(),
                Rows.orNull(run.meanMissMm()), id, at.sequence());
        if (changed == 0) {
            return OptionalInt.empty();
        }
        RunDays.changed(h, "id = ?", id);
        return OptionalInt.of(id);
    }

    /** A winner that an import told of stays. @return the duel's runs */
    List<Integer> ended(Handle h, Context at, Data.DuelEnded duel) {
        int id = names.duel(h, at.journal(), duel.duel());
        Integer winner = duel.winner() == null ? null
                : countedFor(h, id, names.player(h, duel.winner(), at.atMs()));
        h.execute("UPDATE duel SET winner_id = ? WHERE id = ? AND ended_ms IS NULL", winner, id);
        h.execute("UPDATE duel SET ended_sequence = ?, ended_ms = ? WHERE id = ? AND (ended_sequence IS NULL "
                + "OR ended_sequence < ?)", at.sequence(), at.atMs(), id, at.sequence());
        return h.select("SELECT id FROM run WHERE duel_id = ? ORDER BY id", id).mapTo(Integer.class).list();
    }

    /** The player whose run in a duel is counted for another since it began. */
    private static int countedFor(Handle h, int duel, int player) {
        return h.select("SELECT r.player_id FROM amendment m JOIN run r ON r.id = m.run_id WHERE r.duel_id = ? "
                        + "AND m.what = 'reassigned' AND m.was = ? ORDER BY m.id DESC LIMIT 1", duel,
                Integer.toString(player)).mapTo(Integer.class).findOne().orElse(player);
    }

    /** The run that an attempt belongs to, made up as far as the attempt tells where its beginning never came. */
    Run runOf(Handle h, Context at, Play play) {
        return run(h, at, new Data.Of(play.run(), play.duel(), play.player(), 1));
    }

    private Run run(Handle h, Context at, Data.Of of) {
        return known(h, at, of).orElseGet(() -> remember(at, of, insert(h, at, of)));
    }

    private Optional<Run> known(Handle h, Context at, Data.Of of) {
        Run known = remembered.get(List.<Object>of(at.journal(), of.run()));
        return known != null ? Optional.of(known) : find(h, at, of).map(found -> remember(at, of, found));
    }

    private Run remember(Context at, Data.Of of, Run run) {
        if (remembered.size() >= MOST_REMEMBERED) {
            remembered.clear();
        }
        remembered.put(List.of(at.journal(), of.run()), run);
        return run;
    }

    private static Optional<Run> find(Handle h, Context at, Data.Of of) {
        return h.select("SELECT id, player_id, drill_id FROM run WHERE journal_id = ? AND name = ?", at.journal(),
                of.run()).map((row, ctx) -> new Run(row.getInt(1), row.getInt(2), row.getObject(3) == null ? null
                : row.getInt(3))).findOne();
    }

    private Run insert(Handle h, Context at, Data.Of of) {
        Run run = new Run(numbers.next(h, "run"), names.player(h, of.player(), at.atMs()), null);
        h.execute("INSERT INTO run (id, journal_id, lane_id, name, duel_id, player_id, play_order, started_sequence, "
                        + "started_ms) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", run.id(), at.journal(), at.lane(), of.run(),
                names.duel(h, at.journal(), of.duel()), run.player(), of.order(), at.sequence(), at.atMs());
        RunSums.began(h, run.player(), at.lane(), at.atMs());
        return run;
    }
}
