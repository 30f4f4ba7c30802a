package org.cupbeam.edge;

/** Where edges come from while a lane plays. Replays read their trace directly instead. */
public interface EdgeSource extends AutoCloseable {
    /** Starts handing edges to the sink, from threads of the source's own, until closed. Called once. */
    void start(EdgeSink sink);

    /** Stops, and returns once no further edge can reach the sink. */
    @Override
    void close();
}
