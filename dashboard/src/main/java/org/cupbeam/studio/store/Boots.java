package org.cupbeam.studio.store;

import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cupbeam.event.Stamp;
import org.cupbeam.studio.store.Stays.Place;
import org.cupbeam.studio.store.sums.PuttSums;
import org.cupbeam.studio.store.sums.RunSums;
import org.jdbi.v3.core.Handle;

/** What is known of the wall clock in each start of a lane's machine, and the times that follow from it. */
final class Boots {
    /** A moment on both clocks. */
    record Anchor(long wallMs, long monotonicNs) {
        long wallMsAt(long otherMonotonicNs) {
            return wallMs - Math.floorDiv(monotonicNs - otherMonotonicNs, 1_000_000L);
        }
    }

    /** When something was: 1 as the lane said, 2 set right from an anchor, 0 not to be believed. */
    record When(int boot, long atMs, int synchronised) {
    }

    private final Numbers numbers;
    private final Map<Integer, Optional<Anchor>> anchors = new HashMap<>();

    Boots(Numbers numbers) {
        this.numbers = numbers;
    }

    void forget() {
        anchors.clear();
    }

    When when(Handle h, int journal, long sequence, Stamp stamp, Instant time) {
        int boot = boot(h, journal, sequence, stamp.boot());
        if (stamp.clock() == Stamp.Clock.SYNCHRONISED) {
            return new When(boot, time.toEpochMilli(), 1);
        }
        return anchor(h, boot).map(anchor -> new When(boot, anchor.wallMsAt(stamp.monotonicNs()), 2))
                .orElseGet(() -> new When(boot, time.toEpochMilli(), 0));
    }

    /**
     * The clock has been set: gives every earlier moment of that start that could not be believed its right time, in
     * the events and in what was made of them.
     */
    void set(Handle h, int journal, int lane, int boot, Anchor anchor) {
        h.execute("UPDATE boot SET wall_ms = ?, monotonic_ns = ? WHERE id = ?", anchor.wallMs(), anchor.monotonicNs(),
                boot);
        anchors.put(boot, Optional.of(anchor));
        long first = h.select("SELECT first_sequence FROM boot WHERE id = ?", boot).mapTo(Long.class).one();
        List<Long> wrong = h.select("SELECT sequence FROM event WHERE journal_id = ? AND sequence >= ? AND boot_id = ? "
                + "AND synchronised = 0 ORDER BY sequence", journal, first, boot).mapTo(Long.class).list();
        if (wrong.isEmpty()) {
            return;
        }
        long from = wrong.get(0);
        long to = wrong.get(wrong.size() - 1);
        Set<Place> quarters = new HashSet<>(quarters(h, journal, lane, from, to));
        h.execute("UPDATE event SET at_ms = ? - (? - monotonic_ns) / 1000000, synchronised = 2 WHERE journal_id = ? "
                + "AND sequence BETWEEN ? AND ? AND boot_id = ? AND synchronised = 0", anchor.wallMs(),
                anchor.monotonicNs(), journal, from, to, boot);
        PuttSums.around(h, () -> takeTimes(h, "attempt", "at_ms", "sequence", journal, from, to), "journal_id = ? AND sequence BETWEEN ? AND ?",
                journal, from, to);
        PuttsVersion.changedBetween(h, journal, from, to);
        takeTimes(h, "correction", "at_ms", "sequence", journal, from, to);
        RunSums.around(h, () -> takeTimes(h, "run", "started_ms", "started_sequence", journal, from, to),
                "journal_id = ? AND started_sequence BETWEEN ? AND ?", journal, from, to);
        takeTimes(h, "run", "ended_ms", "ended_sequence", journal, from, to);
        takeTimes(h, "duel", "ended_ms", "ended_sequence", journal, from, to);
        quarters.addAll(quarters(h, journal, lane, from, to));
        quarters.forEach(quarter -> Quarters.count(h, quarter));
    }

    /** Rounded down, as a clock that was set back in 1970 needs: SQL divides towards zero. */
    private static Set<Place> quarters(Handle h, int journal, int lane, long from, long to) {
        return h.select("SELECT DISTINCT (at_ms - (at_ms % ? + ?) % ?) / ? FROM attempt WHERE journal_id = ? "
                + "AND sequence BETWEEN ? AND ?", Quarters.LENGTH_MS, Quarters.LENGTH_MS, Quarters.LENGTH_MS,
                Quarters.LENGTH_MS, journal, from, to).map((row, ctx) -> new Place(lane, row.getLong(1))).set();
    }

    /** What an import brought in place of an event that never came keeps the time that it came with. */
    private static void takeTimes(Handle h, String table, String time, String sequence, int journal, long from, long to) {
        String event = " FROM event e WHERE e.journal_id = " + table + ".journal_id AND e.sequence = " + table + "." + sequence + ")";
        h.execute("UPDATE " + table + " SET " + time + " = (SELECT e.at_ms" + event + " WHERE journal_id = ? AND " + sequence
                + " BETWEEN ? AND ? AND EXISTS (SELECT 1" + event, journal, from, to);
    }

    private int boot(Handle h, int journal, long sequence, String name) {
        return numbers.of(h, "boot", "journal_id = ? AND name = ?", List.of(journal, name), id ->
                h.execute("INSERT INTO boot (id, journal_id, name, first_sequence) VALUES (?, ?, ?, ?)", id, journal,
                        name, sequence));
    }

    private Optional<Anchor> anchor(Handle h, int boot) {
        if (anchors.size() > 10_000) {
            anchors.clear();
        }
        return anchors.computeIfAbsent(boot, id -> h.select("SELECT wall_ms, monotonic_ns FROM boot WHERE id = ? "
                + "AND wall_ms IS NOT NULL", id).map((row, ctx) -> new Anchor(row.getLong(1), row.getLong(2))).findOne());
    }
}
