package org.cupbeam.edge;

import java.util.List;

/** Where edges come from while a lane plays. Replays read their trace directly instead. */
public interface EdgeSource extends AutoCloseable {
    /** Starts handing edges to the sink, from one thread at a time of the source's own, until closed. Called once. */
    void start(EdgeSink sink);

    /** How long after its time an edge reaches the sink at most, but for mishaps, ns: no sooner is it asked whether time is settled. */
    default long latenessNs() {
        return 0;
    }

    /**
     * Every edge earlier than this has reached the sink. Any thread may ask.
     *
     * @param nowNs on the edges' clock
     * @return ns on the same; {@link #latenessNs} before now, or less where a source knows that it is behind
     */
    default long settledNs(long nowNs) {
        return nowNs - latenessNs();
    }

    /** How each channel is being read, in the rig's order; empty where there is nothing to say. Any thread may ask. */
    default List<ChannelHealth> health() {
        return List.of();
    }

    /** Stops, and returns once no further edge can reach the sink. */
    @Override
    void close();
}
