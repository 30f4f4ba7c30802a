package org.cupbeam.studio.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.Data;
import org.cupbeam.event.Source;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.store.sums.PuttSums;
import org.cupbeam.studio.store.sums.RunDays;
import org.cupbeam.studio.store.sums.RunSums;
import org.cupbeam.studio.store.sums.Whose;
import org.jdbi.v3.core.Handle;

/**
 * Puts runs and attempts into the record that did not come as events: out of another studio's record, or an older copy
 * of this one's. What is there already is left as it is. Used within one {@link Store#write}, and {@link #done} at its
 * end.
 */
public final class LateEntries {
    /** Which event something came of, and when that was, ms since 1970. */
    public record At(Source source, long sequence, long atMs) {
    }

    /** How a run ended; {@code won} is null outside a duel, or where nobody did. */
    public record Ended(long sequence, long atMs, Data.RunEnded as, Boolean won) {
    }

    /** People without a name, by the numbers that they had elsewhere. */
    public static final class Nobodies {
        private final Map<Integer, Integer> here = new HashMap<>();
    }

    private final Store store;
    private final Handle h;
    private final Names names;
    private final Nobodies nobodies;
    private final Rows rows;
    private final Quarters quarters = new Quarters();
    private final Map<Integer, Long> upTo = new HashMap<>();
    private final Set<List<Object>> entered = new HashSet<>();
    private final List<Integer> uncounted = new ArrayList<>();

    public LateEntries(Store store, Handle h, Nobodies nobodies) {
        this.store = store;
        this.h = h;
        this.names = new Names(store.numbers());
        this.nobodies = nobodies;
        this.rows = new Rows(h);
    }

    /**
     * Enters a run.
     *
     * @param of     whose; a player without a name is {@code nobody}
     * @param drill  null where not known
     * @param ended  null while it goes on
     * @return false where it is there already
     */
    public boolean run(At at, Data.Of of, int nobody, Drill drill, Tags tags, double limitMm, Ended ended) {
        int journal = journal(at);
        if (find(journal, of.run()).isPresent()) {
            return false;
        }
        insert(at, journal, of, nobody, drill == null ? null : names.drill(h, drill), tags, limitMm);
        if (ended != null) {
            h.execute("UPDATE run SET ended_sequence = ?, ended_ms = ?, ended_by = ?, stations_cleared = ?, attempts = ?, "
                            + "holed = ?, mean_miss_mm = ? WHERE journal_id = ? AND name = ?", ended.sequence(), ended.atMs(),
                    Rows.word(ended.as().endedBy()), ended.as().stationsCleared(), ended.as().attempts(),
                    ended.as().holed(), Rows.orNull(ended.as().meanMissMm()), journal, of.run());
            RunDays.changed(h, "journal_id = ? AND name = ?", journal, of.run());
        }
        if (ended != null && Boolean.TRUE.equals(ended.won())) {
            h.execute("UPDATE duel SET ended_sequence = ?, ended_ms = ?, winner_id = (SELECT player_id FROM run "
                    + "WHERE journal_id = ? AND name = ?) WHERE journal_id = ? AND name = ?", ended.sequence(),
                    ended.atMs(), journal, of.run(), journal, of.duel());
        }
        return true;
    }

    /** Enters an attempt. @return false where it is there already */
    public boolean attempt(At at, Data.Attempt attempt, int nobody, boolean counts) {
        int journal = journal(at);
        boolean known = h.select("SELECT 1 FROM attempt WHERE journal_id = ? AND sequence = ?", journal, at.sequence())
                .mapTo(Integer.class).findOne().isPresent();
        if (known || !entered.add(List.of(journal, at.sequence()))) {
            return false;
        }
        int lane = names.lane(h, at.source());
        int id = store.next(h, "attempt");
        Plays.Run run = runOf(at, journal, attempt, nobody);
        rows.attempt(id, journal, at.sequence(), lane, at.atMs(), attempt, run);
        if (counts) {
            quarters.add(lane, at.atMs(), attempt, run == null ? null : run.id(), at.sequence());
        } else {
            uncounted.add(id);
        }
        return true;
    }

    /** Enters a player who is not there yet. @return the number */
    public int player(String name, long createdMs) {
        return names.player(h, name, createdMs);
    }

    /** Enters what was said of an attempt by a lane's event, or here. @return false where it is there already */
    public boolean change(Source source, long of, Long byEvent, String what, String by, String reason, long atMs) {
        int journal = names.journal(h, source, 0);
        if (byEvent != null) {
            return h.execute("INSERT INTO correction (journal_id, sequence, of_sequence, what, by_whom, reason, at_ms) "
                    + "VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING", journal, byEvent, of, what, by, reason, atMs)
                    == 1;
        }
        Optional<Integer> attempt = findAttempt(source, of);
        boolean known = attempt.isEmpty() || h.select("SELECT 1 FROM amendment WHERE attempt_id = ? AND what = ? "
                + "AND at_ms = ?", attempt.get(), what, atMs).mapTo(Integer.class).findFirst().isPresent();
        if (!known) {
            int id = store.next(h, "amendment");
            h.execute("INSERT INTO amendment (id, what, attempt_id, by_whom, reason, at_ms) VALUES (?, ?, ?, ?, ?, ?)", id, what,
                    attempt.get(), by, reason, atMs);
            Whose.change(h, id);
        }
        return !known;
    }

    /** Enters what became of a run's score here. @return false where it is there already, or the run is not */
    public boolean change(int run, String what, String was, String became, String by, String reason, long atMs) {
        boolean known = h.select("SELECT 1 FROM amendment WHERE run_id = ? AND what = ? AND at_ms = ? AND became = ?", run, what,
                atMs, became).mapTo(Integer.class).findFirst().isPresent();
        if (!known) {
            int id = store.next(h, "amendment");
            h.execute("INSERT INTO amendment (id, what, run_id, was, became, by_whom, reason, at_ms) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                    id, what, run, was, became, by, reason, atMs);
            Whose.change(h, id);
        }
        return !known;
    }

    /** The number of a run by what its lane calls it. */
    public Optional<Integer> findRun(Source source, String name) {
        return find(names.journal(h, source, 0), name).map(Plays.Run::id);
    }

    /** The number of an attempt by its event; of those entered, only after {@link #done}. */
    public Optional<Integer> findAttempt(Source source, long sequence) {
        return h.select("SELECT id FROM attempt WHERE journal_id = ? AND sequence = ?", names.journal(h, source, 0), sequence)
                .mapTo(Integer.class).findOne();
    }

    /** Writes what has gathered. */
    public void done() {
        rows.write();
        uncounted.forEach(id -> PuttSums.around(h, () -> h.execute("UPDATE attempt SET counts = 0 WHERE id = ?", id), "id = ?", id));
        uncounted.clear();
        quarters.write(h);
        upTo.forEach((journal, sequence) -> h.execute("UPDATE journal SET imported_to = ? WHERE id = ? "
                + "AND imported_to < ?", sequence, journal, sequence));
    }

    private Plays.Run runOf(At at, int journal, Data.Attempt attempt, int nobody) {
        if (attempt.play() == null) {
            return null;
        }
        Data.Of of = new Data.Of(attempt.play().run(), attempt.play().duel(), attempt.play().player(), 1);
        return find(journal, of.run()).orElseGet(() -> {
            insert(at, journal, of, nobody, null, attempt.tags(), Double.NaN);
            return find(journal, of.run()).orElseThrow();
        });
    }

    private Optional<Plays.Run> find(int journal, String run) {
        return h.select("SELECT id, player_id, drill_id FROM run WHERE journal_id = ? AND name = ?", journal, run)
                .map((row, ctx) -> new Plays.Run(row.getInt(1), row.getInt(2), row.getObject(3) == null ? null
                        : row.getInt(3))).findOne();
    }

    private void insert(At at, int journal, Data.Of of, int nobody, Integer drill, Tags tags, double limitMm) {
        int player = of.player() == null ? nobody(nobody, at.atMs()) : names.player(h, of.player(), at.atMs());
        int lane = names.lane(h, at.source());
        h.execute("INSERT INTO run (id, journal_id, lane_id, name, duel_id, player_id, drill_id, play_order, breaks, slope, "
                        + "limit_mm, started_sequence, started_ms) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                store.next(h, "run"), journal, lane, of.run(), names.duel(h, journal, of.duel()),
                player, drill, of.order(), Rows.word(tags.breaks()), Rows.word(tags.slope()), Rows.orNull(limitMm),
                at.sequence(), at.atMs());
        RunSums.began(h, player, lane, at.atMs());
    }

    private int nobody(int number, long atMs) {
        return nobodies.here.computeIfAbsent(number, n -> {
            int id = store.next(h, "player");
            h.execute("INSERT INTO player (id, created_ms, forgotten_ms) VALUES (?, ?, ?)", id, atMs, atMs);
            return id;
        });
    }

    /** Not heard of just now: the lane's own journal, when it is heard, is to be the latest. */
    private int journal(At at) {
        int journal = names.journal(h, at.source(), 0);
        upTo.merge(journal, at.sequence(), Math::max);
        return journal;
    }
}
