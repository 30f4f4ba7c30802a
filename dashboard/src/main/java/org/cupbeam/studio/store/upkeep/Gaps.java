package org.cupbeam.studio.store.upkeep;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * Numbers of which a rebuilt store has no event. What was noted as missing before is again; what a lane can no longer have is
 * noted now; for the rest the lane is asked, by telling it that no more is stored than what comes before.
 */
final class Gaps {
    /** How many events that are stored a lane keeps nevertheless, the newest. */
    private static final long LANE_KEEPS = 10_000;
    private static final int MOST_SAID = 10;

    private record Journal(int id, String name, String lane) {
    }

    private record Stretch(long from, long to) {
    }

    private final List<String> said = new ArrayList<>();
    private long asked;
    private long gone;
    private int notSaid;

    /** In words, the first few. */
    List<String> said() {
        List<String> all = new ArrayList<>(said);
        if (notSaid > 0) {
            all.add("and " + notSaid + " more such gaps");
        }
        return all;
    }

    /** Events that lanes are asked for. */
    long asked() {
        return asked;
    }

    /** Events that nobody has any more. */
    long gone() {
        return gone;
    }

    /** Within a transaction, with what was found as {@code old}, and {@code jmap} for journals' numbers there. */
    void note(Handle h) {
        h.createQuery("SELECT j.id, j.name, l.name FROM journal j JOIN lane l ON l.id = j.lane_id ORDER BY j.id").map((row, ctx) ->
                new Journal(row.getInt(1), row.getString(2), row.getString(3))).list().forEach(each -> note(h, each));
    }

    private void note(Handle h, Journal journal) {
        long last = h.select("SELECT coalesce(max(sequence), 0) FROM event WHERE journal_id = ?", journal.id()).mapTo(Long.class).one();
        List<Stretch> gaps = h.select("SELECT before + 1, sequence - 1 FROM (SELECT sequence, lag(sequence, 1, 0) OVER (ORDER BY sequence) "
                + "AS before FROM event WHERE journal_id = ?) AS each WHERE sequence > before + 1 ORDER BY 1", journal.id()).map((row, ctx) ->
                new Stretch(row.getLong(1), row.getLong(2))).list();
        long stored = last;
        for (Stretch each : gaps) {
            long first = gap(h, journal, each, last);
            stored = first == 0 ? stored : Math.min(stored, first - 1);
        }
        long told = Math.max(last, h.select("SELECT max(coalesce(max(started_sequence), 0), coalesce(max(ended_sequence), 0)) FROM run "
                + "WHERE journal_id = ?", journal.id()).mapTo(Long.class).one()); // by rows whose events are gone
        h.execute("UPDATE journal SET stored = ?, mended_to = ? WHERE id = ?", stored, stored < told ? told : 0, journal.id());
    }

    /** @return the first number that its lane is asked for; 0 where there is none */
    private long gap(Handle h, Journal journal, Stretch gap, long last) {
        long first = 0;
        for (Stretch each : without(gap, noted(h, journal, gap))) {
            long goneTo = Math.min(each.to(), last - LANE_KEEPS);
            if (goneTo >= each.from()) {
                h.execute("INSERT INTO missing (journal_id, from_sequence, to_sequence, noted_ms) VALUES (?, ?, ?, ?)", journal.id(),
                        each.from(), goneTo, 0);
                gone += goneTo - each.from() + 1;
                say(journal, each.from(), goneTo, "are gone, and noted as missing: no lane keeps them for so long");
            }
            long from = Math.max(each.from(), goneTo + 1);
            if (from <= each.to()) {
                asked += each.to() - from + 1;
                first = first == 0 ? from : first;
                say(journal, from, each.to(), "are not there; the lane is asked for them again");
            }
        }
        return first;
    }

    /** What had been noted as missing of a gap, noted again. */
    private static List<Stretch> noted(Handle h, Journal journal, Stretch gap) {
        List<Stretch> noted = new ArrayList<>();
        h.select("SELECT max(m.from_sequence, ?), min(m.to_sequence, ?), m.noted_ms FROM old.missing m JOIN jmap j ON j.old = m.journal_id "
                + "WHERE j.new = ? AND m.from_sequence <= ? AND m.to_sequence >= ? ORDER BY 1", gap.from(), gap.to(), journal.id(), gap.to(),
                gap.from()).map((row, ctx) -> new long[] {row.getLong(1), row.getLong(2), row.getLong(3)}).list().forEach(each -> {
                    if (noted.isEmpty() || each[0] > noted.get(noted.size() - 1).to()) {
                        noted.add(new Stretch(each[0], each[1]));
                        h.execute("INSERT INTO missing (journal_id, from_sequence, to_sequence, noted_ms) VALUES (?, ?, ?, ?)", journal.id(),
                                each[0], each[1], each[2]);
                    }
                });
        return noted;
    }

    private static List<Stretch> without(Stretch gap, List<Stretch> noted) {
        List<Stretch> left = new ArrayList<>();
        long from = gap.from();
        for (Stretch each : noted) {
            if (each.from() > from) {
                left.add(new Stretch(from, each.from() - 1));
            }
            from = each.to() + 1;
        }
        if (from <= gap.to()) {
            left.add(new Stretch(from, gap.to()));
        }
        return left;
    }

    private void say(Journal journal, long from, long to, String what) {
        if (said.size() < MOST_SAID) {
            said.add("lane " + journal.lane() + ", journal " + journal.name() + ": events " + from + " to " + to + " " + what);
        } else {
            notSaid++;
        }
    }
}
