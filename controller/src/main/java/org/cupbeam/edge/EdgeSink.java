package org.cupbeam.edge;

/** Whoever takes edges: the tracker in a replay, a bounded queue on a board. */
@FunctionalInterface
public interface EdgeSink {
    /**
     * One change of one channel.
     *
     * @param channel the channel's index in the rig
     * @param active  true when it became blocked, struck or pressed
     * @param timeNs  on a monotonic clock; edges of one source come in order of time
     */
    void edge(int channel, boolean active, long timeNs);
}
