package org.cupbeam.studio.ingest;

/** Whose turn it is to keep events, where several hosts share one store. */
public interface Turns {
    /**
     * The log, while it is this host's turn to write it: another object each turn. Null while it is another host's.
     */
    EventLog log();

    /** One host alone. */
    static Turns always(EventLog log) {
        return () -> log;
    }
}
