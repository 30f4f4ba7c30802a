package org.cupbeam.edge.board;

import org.cupbeam.edge.ChannelHealth;

/** What one line's reader, and after it the merger, have counted. Each field has one writer; any thread may look. */
final class LineCounters {
    private volatile long edges;
    private volatile long lost;
    private volatile long dropped;
    private volatile long late;
    private volatile long lastEdgeNs;
    private volatile long worstLagNs;
    private volatile boolean kernelTime = true;
    private volatile long aliveNs = Long.MIN_VALUE;
    private volatile long settledNs = Long.MIN_VALUE;
    private volatile String fault = "";

    ChannelHealth health(String channel) {
        return new ChannelHealth(channel, edges, lost, dropped, late, lastEdgeNs, worstLagNs, kernelTime, aliveNs, fault);
    }

    void edge(long timeNs) {
        edges = edges + 1;
        lastEdgeNs = timeNs;
    }

    void lost() {
        lost = lost + 1;
    }

    void dropped() {
        dropped = dropped + 1;
    }

    void late() {
        late = late + 1;
    }

    void lag(long lagNs) {
        worstLagNs = Math.max(worstLagNs, lagNs);
    }

    void alive(long nowNs) {
        aliveNs = nowNs;
    }

    long aliveNs() {
        return aliveNs;
    }

    boolean kernelTime() {
        return kernelTime;
    }

    void kernelTime(boolean credible) {
        kernelTime = credible;
    }

    String fault() {
        return fault;
    }

    void fault(String why) {
        fault = why;
    }

    /** No edge earlier than this is still to come from the line; said after the edges that are earlier. */
    void settled(long timeNs) {
        settledNs = Math.max(settledNs, timeNs);
    }

    long settledNs() {
        return settledNs;
    }
}
