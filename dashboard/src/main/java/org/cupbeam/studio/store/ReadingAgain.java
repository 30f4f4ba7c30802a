package org.cupbeam.studio.store;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Source;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Reads again the events that are kept and were not understood: a lane may have been newer than its host, and the host is newer by
 * now. What is understood takes its place among the events around it, once; what is not stays as it is.
 */
final class ReadingAgain {
    /** Puts what an event says into the tables that pages ask, as if it came now. */
    interface Entering {
        void enter(Handle h, Context at, Event event);
    }

    private record Kept(int journal, int lane, Source source, long sequence, String envelope) {
    }

    private static final Logger LOG = LoggerFactory.getLogger(ReadingAgain.class);
    private static final int AT_ONCE = 200;

    private final Store store;
    private final Boots boots;
    private final Entering entering;
    private final Afterwards afterwards;
    private int understood;
    private int left;

    ReadingAgain(Store store, Boots boots, Entering entering) {
        this.store = store;
        this.boots = boots;
        this.entering = entering;
        this.afterwards = new Afterwards(store.numbers());
    }

    void all() {
        List<Kept> some = after(0, 0);
        while (!some.isEmpty()) {
            some.forEach(this::one);
            Kept last = some.get(some.size() - 1);
            some = after(last.journal(), last.sequence());
        }
        if (understood + left > 0) {
            LOG.info("{} events that were kept without being understood are understood now; {} are not yet", understood, left);
        }
    }

    private List<Kept> after(int journal, long sequence) {
        return store.read(h -> h.select("""
                SELECT e.journal_id, j.lane_id, s.name, l.name, j.name, e.sequence, e.envelope FROM event e
                JOIN journal j ON j.id = e.journal_id JOIN lane l ON l.id = j.lane_id JOIN studio s ON s.id = l.studio_id
                WHERE e.problem IS NOT NULL AND (e.journal_id > ? OR e.journal_id = ? AND e.sequence > ?)
                ORDER BY e.journal_id, e.sequence LIMIT ?
                """, journal, journal, sequence, AT_ONCE).map((row, ctx) -> new Kept(row.getInt(1), row.getInt(2),
                new Source(row.getString(3), row.getString(4), row.getString(5)), row.getLong(6), row.getString(7))).list());
    }

    /** In a transaction of its own: one that cannot be entered keeps no other from it. */
    private void one(Kept kept) {
        Optional<Event> event = read(kept);
        if (event.isEmpty()) {
            left++;
            return;
        }
        try {
            store.writing(h -> enter(h, kept, event.get()));
            understood++;
        } catch (RuntimeException e) {
            left++;
            LOG.error("{} event {} is understood now, and could not be entered; it stays as it is", kept.source(), kept.sequence(), e);
        }
    }

    /** Whoever was forgotten meanwhile is not to be made a player again by what was written in the name's place. */
    private static Optional<Event> read(Kept kept) {
        try {
            Event event = EventJson.decode(kept.envelope().getBytes(StandardCharsets.UTF_8));
            boolean itself = event.source().equals(kept.source()) && event.sequence() == kept.sequence();
            return itself && !(event.data() instanceof Data.Other) && !kept.envelope().contains("\"" + Forgetting.INSTEAD)
                    ? Optional.of(event) : Optional.empty();
        } catch (BadMessage e) {
            return Optional.empty();
        }
    }

    private void enter(Handle h, Kept kept, Event event) {
        Boots.When when = boots.when(h, kept.journal(), kept.sequence(), event.data().stamp(), event.time());
        h.execute("UPDATE boot SET first_sequence = ? WHERE id = ? AND first_sequence > ?", kept.sequence(), when.boot(), kept.sequence());
        int changed = h.execute("UPDATE event SET type = ?, boot_id = ?, monotonic_ns = ?, synchronised = ?, at_ms = ?, problem = NULL "
                        + "WHERE journal_id = ? AND sequence = ? AND problem IS NOT NULL", event.data().type(), when.boot(),
                event.data().stamp().monotonicNs(), when.synchronised(), when.atMs(), kept.journal(), kept.sequence());
        Context at = new Context(kept.journal(), kept.lane(), kept.sequence(), when);
        if (changed == 1 && !afterwards.undid(h, at, event.data())) { // another host may have been quicker
            entering.enter(h, at, event);
            afterwards.follow(h, at, event.data());
        }
    }
}
