package org.cupbeam.studio.sim;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.Data;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.store.Store;

/** Hosts with a fault that the simulation has to find. */
final class BrokenHosts {
    private BrokenHosts() {
    }

    /** Says that a batch is kept when it has only been taken, and commits it with the next one. */
    static EventLog commitsLater(EventLog log) {
        return new EventLog() {
            private final List<Batch> waiting = new ArrayList<>();

            @Override
            public List<Kept> kept() {
                return log.kept();
            }

            @Override
            public void commit(Batch batch) {
                waiting.forEach(log::commit);
                waiting.clear();
                waiting.add(batch);
            }
        };
    }

    /** Does not know after a start what it has, and takes each attempt that comes again for another. */
    static EventLog keepsAgain(Store store, EventLog log) {
        return new EventLog() {
            private final List<Kept> had = log.kept();

            @Override
            public List<Kept> kept() {
                return List.of();
            }

            @Override
            public void commit(Batch batch) {
                log.commit(batch);
                batch.arrivals().stream().filter(this::isHad).forEach(each -> store.writing(h -> h.execute("INSERT INTO "
                        + "attempt (id, journal_id, sequence, lane_id, at_ms, holed, overshoot, rim, entered) SELECT "
                        + "id + 100000, journal_id, sequence + 100000, lane_id, at_ms, holed, overshoot, rim, entered "
                        + "FROM attempt WHERE sequence = ? ON CONFLICT DO NOTHING", each.sequence())));
            }

            private boolean isHad(Arrival arrival) {
                return arrival.event() != null && arrival.event().data() instanceof Data.Attempt && had.stream().anyMatch(each ->
                        each.source().equals(arrival.source()) && arrival.sequence() <= each.upTo());
            }
        };
    }
}
