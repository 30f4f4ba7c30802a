package org.cupbeam.edge;

/**
 * How one channel's wire has been read since the source started.
 *
 * @param channel    its name
 * @param edges      changes handed on
 * @param lost       how often an edge is known to have been missed: two in a row in one direction, or a level that the
 *                   last edge does not explain
 * @param dropped    edges that found no room on their way
 * @param late       edges that came after a later one of another channel had been handed on; they took its time
 * @param lastEdgeNs time of the last edge; 0 where there was none
 * @param worstLagNs the longest from an edge to its being read
 * @param kernelTime whether edges carry the kernel's own time stamps
 * @param aliveNs    when whoever reads it last gave a sign of life
 * @param fault      why it cannot be read now; empty where it can
 */
public record ChannelHealth(String channel, long edges, long lost, long dropped, long late, long lastEdgeNs,
                            long worstLagNs, boolean kernelTime, long aliveNs, String fault) {
}
