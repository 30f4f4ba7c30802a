package org.cupbeam.edge.board;

import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Puts the edges of all lines into one order, that of their time. Each line is read by a thread of its own, so an edge
 * waits for earlier ones of other lines: until each line is known to have none, and at most for the window. For one
 * thread, turn by turn.
 */
final class EdgeMerger {
    /** How long there is nothing to do where no edge waits. */
    static final long IDLE_NS = 50_000_000;
    /** A line that has not been heard of for so long holds up time no more. */
    static final long SILENCE_MAX_NS = 500_000_000;
    /** Edges are stamped some microseconds late; a trace has microseconds, and replays to the same. */
    private static final long UNIT_NS = 1000;
    private static final Logger LOG = LoggerFactory.getLogger(EdgeMerger.class);

    private final List<LineReader> lines;
    private final EdgeSink sink;
    private final long windowNs;
    private long lastNs = Long.MIN_VALUE;
    private boolean sinkFailed;

    /** @param windowNs how long an edge waits at most for earlier ones of other lines */
    EdgeMerger(List<LineReader> lines, EdgeSink sink, long windowNs) {
        this.lines = lines;
        this.sink = sink;
        this.windowNs = windowNs;
    }

    /**
     * Hands on one edge, if one may go, or how far time has got.
     *
     * @return for how long there is nothing to do then unless an edge comes, ns; 0 where there may be more
     */
    long turn(long nowNs) {
        // Asked before the rings are looked at: an edge from before this time is in its ring by now.
        long settledNs = settledNs(null);
        int first = first();
        if (first < 0) {
            settle(Math.max(settledNs, nowNs - SILENCE_MAX_NS));
            return IDLE_NS;
        }
        LineReader line = lines.get(first);
        long waitNs = firstArrivalNs() + windowNs - nowNs;
        if (waitNs > 0 && settledNs(line) < line.ring().headTimeNs()) {
            return waitNs;
        }
        handOn(first);
        return 0;
    }

    /** Hands on all that is left, once no line is read any more. */
    void drain() {
        for (int first = first(); first >= 0; first = first()) {
            handOn(first);
        }
    }

    /** The line with the earliest edge waiting, or -1. */
    private int first() {
        int first = -1;
        for (int i = 0; i < lines.size(); i++) {
            EdgeRing ring = lines.get(i).ring();
            if (!ring.isEmpty() && (first < 0 || ring.headTimeNs() < lines.get(first).ring().headTimeNs())) {
                first = i;
            }
        }
        return first;
    }

    /** Since when any edge has been waiting, be it behind an earlier one that came after it. */
    private long firstArrivalNs() {
        long arrivalNs = Long.MAX_VALUE;
        for (LineReader line : lines) {
            if (!line.ring().isEmpty()) {
                arrivalNs = Math.min(arrivalNs, line.ring().headArrivalNs());
            }
        }
        return arrivalNs;
    }

    /** The time before which no more edges can come from any line but one; those that wait have an edge to show. */
    private long settledNs(LineReader except) {
        long settledNs = Long.MAX_VALUE;
        for (LineReader line : lines) {
            if (line != except && (except == null || line.ring().isEmpty())) {
                settledNs = Math.min(settledNs, line.counters().settledNs());
            }
        }
        return settledNs;
    }

    private void handOn(int channel) {
        LineReader line = lines.get(channel);
        EdgeRing ring = line.ring();
        boolean active = ring.headActive();
        long timeNs = wholeUnits(ring.headTimeNs());
        ring.pop();
        if (timeNs < lastNs) {
            line.counters().late();
        }
        lastNs = Math.max(lastNs, timeNs);
        try {
            sink.edge(channel, active, lastNs);
        } catch (RuntimeException failure) {
            sinkFailed(failure);
        }
    }

    private void settle(long settledNs) {
        long timeNs = wholeUnits(settledNs);
        if (timeNs > lastNs) {
            lastNs = timeNs;
            try {
                sink.settled(timeNs);
            } catch (RuntimeException failure) {
                sinkFailed(failure);
            }
        }
    }

    private void sinkFailed(RuntimeException failure) {
        if (!sinkFailed) {
            sinkFailed = true;
            LOG.error("Whoever takes the edges failed; going on", failure);
        }
    }

    static long wholeUnits(long timeNs) {
        return timeNs - Math.floorMod(timeNs, UNIT_NS);
    }
}
