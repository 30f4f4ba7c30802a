package org.cupbeam.studio.ingest;

import java.util.List;
import org.cupbeam.event.Source;

/** Where events are kept. One thread calls it. */
public interface EventLog {
    /** A source that events were kept of, and the number up to which every one is. */
    record Kept(Source source, long upTo) {
    }

    /** Every source known, the one last heard of last. */
    List<Kept> kept();

    /** The number up to which everything of a source is kept by now, be it by another host; 0 for nothing. */
    default long upTo(Source source) {
        return 0;
    }

    /**
     * Keeps a batch for good, or throws and keeps nothing of it. Events that are kept already are passed over.
     *
     * @throws NotNow           when that cannot be done now, whatever the events are
     * @throws RuntimeException when it cannot be done with one of these events
     */
    void commit(Batch batch);

    /**
     * Reads again what an earlier version kept and did not understand. Done at the beginning of a turn, before anything is
     * committed.
     */
    default void readAgain() {
    }

    /**
     * Whether an event that is kept under this one's name says something else. Whatever is not kept does not.
     *
     * @throws RuntimeException when that cannot be looked up now
     */
    default boolean differs(Arrival arrival) {
        return false;
    }
}
