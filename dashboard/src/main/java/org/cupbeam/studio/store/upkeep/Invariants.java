package org.cupbeam.studio.store.upkeep;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Objects;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Source;
import org.cupbeam.studio.store.CheckSum;
import org.cupbeam.studio.store.upkeep.Checkup.Troubles;
import org.cupbeam.studio.store.sums.Sum;
import org.jdbi.v3.core.Handle;

/** What is true of every store of ours, whatever was played: what a database cannot see to by itself. */
final class Invariants {
    private static final int ROWS_AT_ONCE = 1_000;
    private static final String WHERE = " JOIN journal j ON j.id = %s.journal_id JOIN lane l ON l.id = j.lane_id "
            + "JOIN studio s ON s.id = l.studio_id ";

    private final Handle h;
    private final Troubles troubles;

    Invariants(Handle h, Troubles troubles) {
        this.h = h;
        this.troubles = troubles;
    }

    void hold() {
        h.select("SELECT j.id, s.name, l.name, j.name, j.stored, j.mended_to FROM journal j JOIN lane l ON l.id = j.lane_id "
                + "JOIN studio s ON s.id = l.studio_id ORDER BY j.id").map((row, ctx) -> new Numbered(row.getInt(1), source(row, 2),
                row.getLong(5), row.getLong(6))).list().forEach(this::withoutHoles);
        h.createQuery("SELECT s.name, l.name, j.name, e.sequence, e.envelope, e.check_sum, e.problem, a.id, a.holed, a.finish_mm, "
                + "a.pace_mm, j.imported_to FROM event e" + WHERE.formatted("e") + "LEFT JOIN attempt a ON a.journal_id = e.journal_id "
                + "AND a.sequence = e.sequence ORDER BY e.journal_id, e.sequence").setFetchSize(ROWS_AT_ONCE)
                .map((row, ctx) -> wrong(row)).stream().filter(Objects::nonNull).forEach(troubles::add);
        count("SELECT count(*) FROM attempt a JOIN journal j ON j.id = a.journal_id WHERE a.sequence > j.imported_to AND NOT EXISTS "
                + "(SELECT 1 FROM event e WHERE e.journal_id = a.journal_id AND e.sequence = a.sequence)", "attempts have no event");
        for (Sum each : Sum.ALL) {
            troubled(each.differences(h), each.what() + " are not what the attempts say: 'store rebuild' makes them anew");
        }
        count("""
                SELECT count(*) FROM run r JOIN journal j ON j.id = r.journal_id
                WHERE r.attempts IS NOT NULL AND r.drill_id IS NOT NULL AND j.imported_to = 0
                AND r.started_sequence > j.mended_to AND NOT EXISTS (SELECT 1 FROM missing m WHERE m.journal_id = j.id)
                AND NOT EXISTS (SELECT 1 FROM event e WHERE e.journal_id = j.id AND e.problem IS NOT NULL)
                AND NOT EXISTS (SELECT 1 FROM amendment m WHERE m.run_id = r.id)
                AND (r.attempts <> (SELECT count(*) FROM attempt a WHERE a.run_id = r.id AND a.counts = 1)
                    OR r.holed <> (SELECT count(*) FROM attempt a WHERE a.run_id = r.id AND a.counts = 1 AND a.holed = 1))
                """, "runs' scores are not what their attempts say");
    }

    private record Numbered(int id, Source source, long stored, long mended) {
    }

    /** Every number up to {@code stored} is an event's, or noted as missing, and beyond there are but those that a repair found. */
    private void withoutHoles(Numbered journal) {
        long[] upTo = {0, 0}; // without a hole; how many holes
        h.createQuery("SELECT sequence AS f, sequence AS t FROM event WHERE journal_id = " + journal.id() + " UNION ALL "
                + "SELECT from_sequence, to_sequence FROM missing WHERE journal_id = " + journal.id() + " ORDER BY 1")
                .setFetchSize(ROWS_AT_ONCE).map((row, ctx) -> new long[] {row.getLong(1), row.getLong(2)}).forEach(each -> {
                    if (each[0] > upTo[0] + 1 && upTo[0] < journal.stored() && upTo[1]++ == 0) {
                        troubles.add(words(journal.source()) + ": events " + (upTo[0] + 1) + " to " + (each[0] - 1)
                                + " are not there, and not noted as missing");
                    }
                    upTo[0] = Math.max(upTo[0], each[1]);
                });
        if (upTo[1] > 1) {
            troubles.add(words(journal.source()) + ": and " + (upTo[1] - 1) + " more gaps");
        }
        if (upTo[0] < journal.stored() || upTo[0] > Math.max(journal.stored(), journal.mended())) {
            troubles.add(words(journal.source()) + ": its events go up to " + upTo[0] + ", and its lane was told " + journal.stored());
        }
    }

    /** What is wrong with an event, and with what was made of it; null where nothing is. */
    private static String wrong(ResultSet row) throws SQLException {
        Source source = source(row, 1);
        long sequence = row.getLong(4);
        String envelope = row.getString(5);
        String sum = row.getString(6);
        String event = words(source) + ": event " + sequence;
        if (sum != null && !sum.equals(CheckSum.of(envelope))) {
            return event + " is not as it was kept: its text does not have its check sum";
        }
        if (row.getString(7) != null) {
            return null;
        }
        try {
            Event is = EventJson.decode(envelope.getBytes(StandardCharsets.UTF_8));
            if (is.sequence() != sequence || !is.source().equals(source)) {
                return event + " is another one";
            }
            return is.data() instanceof Data.Attempt attempt ? wrong(event, attempt.putt(), row, sequence) : null;
        } catch (BadMessage e) {
            return event + " does not read (" + e.getMessage() + ")";
        }
    }

    private static String wrong(String event, Putt putt, ResultSet row, long sequence) throws SQLException {
        if (row.getObject(8) == null) {
            return event + " is an attempt's, and the attempt is not there";
        }
        boolean same = (row.getInt(9) == 1) == (putt.outcome() == Putt.Outcome.HOLED) && same(putt.finishMm(), row, 10)
                && same(putt.paceMm(), row, 11);
        return same || sequence <= row.getLong(12) ? null : event + " and its attempt are not the same";
    }

    private static boolean same(double mm, ResultSet row, int column) throws SQLException {
        double kept = row.getDouble(column);
        return row.wasNull() ? Double.isNaN(mm) : kept == mm;
    }

    private void count(String sql, String what) {
        troubled(h.createQuery(sql).mapTo(Long.class).one(), what);
    }

    private void troubled(long number, String what) {
        if (number > 0) {
            troubles.add(number + " " + what);
        }
    }

    private static Source source(ResultSet row, int from) throws SQLException {
        return new Source(row.getString(from), row.getString(from + 1), row.getString(from + 2));
    }

    static String words(Source source) {
        return "lane " + source.lane() + ", journal " + source.journal();
    }
}
