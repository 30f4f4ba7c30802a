package org.cupbeam.studio.store;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Source;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.ingest.NotNow;
import org.cupbeam.studio.lease.LeaseRow;
import org.cupbeam.studio.lease.Succession;
import org.jdbi.v3.core.Handle;

/** Keeps events in the store, and what they say in the tables that pages ask. */
public final class Keeper implements EventLog {
    /** How far a journal is kept, and up to where rows of it may be here already. */
    private record UpTo(long stored, long imported, long mended) {
    }

    private final Store store;
    private final Numbers numbers;
    private final Names names;
    private final Boots boots;
    private final Plays plays;

    public Keeper(Store store) {
        this.store = store;
        numbers = store.numbers();
        names = new Names(numbers);
        boots = new Boots(numbers);
        plays = new Plays(names, numbers);
        store.remembers(boots::forget);
        store.remembers(plays::forget);
    }

    /**
     * One of all hosts of a site, which are those at one broker: who of them keeps events.
     *
     * @param holder this host, for people
     */
    public Succession among(String site, String holder) {
        LeaseRow row = new LeaseRow(store.database()::writer, site, holder);
        return new Succession(row, this, (batch, token, time) -> writing(h -> {
            keep(h, batch);
            row.hold(h, token, time); // last, so that it is not held, nor its renewal held up, while the rest is written
        }), store::isOutOfDate, System::nanoTime);
    }

    @Override
    public List<Kept> kept() {
        return store.read(h -> h.select("""
                SELECT s.name, l.name, j.name, j.stored FROM journal j
                JOIN lane l ON l.id = j.lane_id JOIN studio s ON s.id = l.studio_id ORDER BY j.seen_ms, j.id
                """).map((row, ctx) -> new Kept(new Source(row.getString(1), row.getString(2), row.getString(3)),
                row.getLong(4))).list());
    }

    @Override
    public long upTo(Source source) {
        return store.read(h -> h.select("""
                SELECT j.stored FROM journal j JOIN lane l ON l.id = j.lane_id JOIN studio s ON s.id = l.studio_id
                WHERE s.name = ? AND l.name = ? AND j.name = ?""", source.studio(), source.lane(), source.journal())
                .mapTo(Long.class).findOne().orElse(0L));
    }

    @Override
    public void commit(Batch batch) {
        writing(h -> keep(h, batch));
    }

    /** What is the store's own trouble is told from what is an event's. */
    private void writing(Consumer<Handle> change) {
        try {
            store.writing(change);
        } catch (StoreTrouble e) {
            throw new NotNow(e.getMessage(), e);
        }
    }

    @Override
    public void readAgain() {
        new ReadingAgain(store, boots, (h, at, event) -> {
            Rows rows = new Rows(h);
            Quarters quarters = new Quarters();
            understood(h, at, event, isThere(h, "attempt", at.journal(), at.sequence()), rows, quarters);
            rows.write();
            quarters.write(h);
        }).all();
    }

    @Override
    public boolean differs(Arrival arrival) {
        Source is = arrival.source();
        return store.read(h -> h.select("""
                SELECT e.envelope FROM event e JOIN journal j ON j.id = e.journal_id JOIN lane l ON l.id = j.lane_id
                JOIN studio s ON s.id = l.studio_id WHERE s.name = ? AND l.name = ? AND j.name = ? AND e.sequence = ?
                """, is.studio(), is.lane(), is.journal(), arrival.sequence()).mapTo(String.class).findOne())
                .filter(kept -> !kept.equals(new String(arrival.payload(), StandardCharsets.UTF_8))).isPresent();
    }

    /** Within a transaction. */
    void keep(Handle h, Batch batch) {
        batch.deadLetters().forEach(letter -> DeadLetters.keep(h, numbers, letter));
        for (Batch.Missing each : batch.missing()) {
            missing(h, names.journal(h, each.source(), each.noted().toEpochMilli()), each);
        }
        Map<Source, List<Arrival>> bySource = batch.arrivals().stream()
                .collect(Collectors.groupingBy(Arrival::source, LinkedHashMap::new, Collectors.toList()));
        Rows rows = new Rows(h);
        Quarters quarters = new Quarters();
        bySource.forEach((source, arrivals) -> keep(h, source, arrivals, rows, quarters));
        rows.write();
        quarters.write(h);
    }

    /** Without what is there all the same, as some may be after a repair. */
    private static void missing(Handle h, int journal, Batch.Missing of) {
        long from = of.from();
        List<Long> there = h.select("SELECT sequence FROM event WHERE journal_id = ? AND sequence BETWEEN ? AND ? ORDER BY sequence",
                journal, of.from(), of.to()).mapTo(Long.class).list();
        for (long each : there) {
            missing(h, journal, from, each - 1, of.noted().toEpochMilli());
            from = each + 1;
        }
        missing(h, journal, from, of.to(), of.noted().toEpochMilli());
    }

    private static void missing(Handle h, int journal, long from, long to, long notedMs) {
        if (from <= to) {
            h.execute("INSERT INTO missing (journal_id, from_sequence, to_sequence, noted_ms) VALUES (?, ?, ?, ?) "
                    + "ON CONFLICT DO NOTHING", journal, from, to, notedMs);
        }
    }

    private void keep(Handle h, Source source, List<Arrival> arrivals, Rows rows, Quarters quarters) {
        Arrival last = arrivals.get(arrivals.size() - 1);
        int lane = names.lane(h, source);
        int journal = names.journal(h, source, last.received().toEpochMilli());
        UpTo upTo = h.select("SELECT stored, imported_to, mended_to FROM journal WHERE id = ?", journal).map((row, ctx) ->
                new UpTo(row.getLong(1), row.getLong(2), row.getLong(3))).one();
        for (Arrival each : arrivals) {
            boolean known = each.sequence() <= upTo.mended() && isThere(h, "event", journal, each.sequence());
            if (each.sequence() > upTo.stored() && !known) {
                boolean entered = each.sequence() <= upTo.imported() && isThere(h, "attempt", journal, each.sequence());
                keep(h, journal, lane, each, entered, rows, quarters);
            }
        }
        h.execute("UPDATE journal SET stored = ?, seen_ms = ? WHERE id = ? AND stored < ?", last.sequence(),
                last.received().toEpochMilli(), journal, last.sequence());
    }

    /** An attempt is in the record before its event by an import, an event before those before it by a repair. */
    private static boolean isThere(Handle h, String table, int journal, long sequence) {
        return h.select("SELECT 1 FROM " + table + " WHERE journal_id = ? AND sequence = ?", journal, sequence)
                .mapTo(Integer.class).findOne().isPresent();
    }

    private void keep(Handle h, int journal, int lane, Arrival arrival, boolean entered, Rows rows, Quarters quarters) {
        Event event = arrival.event();
        if (event == null) {
            rows.event(journal, arrival, null);
            return;
        }
        Boots.When when = boots.when(h, journal, event.sequence(), event.data().stamp(), event.time());
        rows.event(journal, arrival, when);
        understood(h, new Context(journal, lane, event.sequence(), when), event, entered, rows, quarters);
    }

    /** What an event says, in the tables that pages ask. @param entered whether it is an attempt that an import has told of */
    private void understood(Handle h, Context at, Event event, boolean entered, Rows rows, Quarters quarters) {
        if (event.data() instanceof Data.Attempt attempt) {
            if (entered) {
                return;
            }
            Plays.Run run = attempt.play() == null ? null : plays.runOf(h, at, attempt.play());
            rows.attempt(numbers.next(h, "attempt"), at.journal(), event.sequence(), at.lane(), at.atMs(), attempt, run);
            quarters.add(at.lane(), at.atMs(), attempt, run == null ? null : run.id(), event.sequence());
        } else if (event.data() instanceof Data.Run run) {
            play(h, at, run, rows);
        } else if (event.data() instanceof Data.Correction || event.data() instanceof Data.Clock) {
            rows.write();
            quarters.write(h);
            amend(h, at, event.data());
        }
    }

    private void play(Handle h, Context at, Data.Run run, Rows rows) {
        if (run instanceof Data.RunStarted started) {
            plays.started(h, at, started);
        } else if (run instanceof Data.RunEnded ended) {
            plays.ended(h, at, ended).ifPresent(id -> rescore(h, id, rows));
        } else if (run instanceof Data.DuelEnded ended) {
            plays.ended(h, at, ended).forEach(id -> rescore(h, id, rows));
        }
    }

    /** A lane counts a putt that was voided while the run went on. */
    private void rescore(Handle h, int run, Rows rows) {
        Corrections.voided(h, run).ifPresent(last -> {
            rows.write();
            new Rescoring(h, numbers, run).by(last.by(), last.reason(), last.atMs(), 0);
        });
    }

    private void amend(Handle h, Context at, Data data) {
        if (data instanceof Data.Correction correction) {
            Corrections.apply(h, numbers, at, correction);
        } else if (data instanceof Data.Clock clock) {
            boots.set(h, at.journal(), at.lane(), at.when().boot(),
                    new Boots.Anchor(clock.wall().toEpochMilli(), clock.stamp().monotonicNs()));
        }
    }
}
