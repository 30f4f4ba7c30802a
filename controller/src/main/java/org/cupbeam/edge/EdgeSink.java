package org.cupbeam.edge;

/** Whoever takes edges: the tracker in a replay, a bounded queue on a board, a trace that is being written. */
@FunctionalInterface
public interface EdgeSink {
    /**
     * One change of one channel. Every channel starts inactive.
     *
     * @param channel the channel's index in the rig
     * @param active  true when it became blocked, struck or pressed
     * @param timeNs  on a monotonic clock; edges of one source come in order of time
     */
    void edge(int channel, boolean active, long timeNs);

    /**
     * Time has got so far: no edge earlier than this will come any more. A source says so now and then while nothing
     * happens, so that what waits for the absence of an edge can be settled.
     *
     * @param timeNs on the edges' clock; never before one said earlier
     */
    default void settled(long timeNs) {
    }
}
