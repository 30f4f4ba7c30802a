package org.cupbeam.edge.board;

import java.util.Arrays;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Puts the edges of all lines into one order, that of their time. Each line is read by a thread of its own, which may be held
 * up for longer than a ball takes from beam to beam. So an edge waits until each other line is known to have no earlier one, with
 * its reader or with the kernel, and half a second at most. For one thread, turn by turn.
 */
final class EdgeMerger {
    /** How long there is nothing to do where no edge waits. */
    static final long IDLE_NS = 50_000_000;
    /** A line whose reader has not come round for so long holds up edges and time no more, and nothing does for longer. */
    static final long SILENCE_MAX_NS = 500_000_000;
    /** The kernel stamps an edge in its interrupt, and a thread of its own queues it: it may not be seen for so long. */
    static final long QUEUED_WITHIN_NS = 2_000_000;
    /** How soon a line is asked again whose reader is busy with an edge; it may come to nothing. */
    static final long ASK_AGAIN_NS = 1_000_000;
    /** Edges are stamped some microseconds late; a trace has microseconds, and replays to the same. */
    private static final long UNIT_NS = 1000;
    private static final Logger LOG = LoggerFactory.getLogger(EdgeMerger.class);

    private final List<LineReader> lines;
    private final EdgeSink sink;
    /** Of each line, before which no more edges can come. */
    private final long[] quietNs;
    /** The line with the earliest edge that waits, or -1. */
    private int first;
    /** Since when any edge has been waiting, be it behind an earlier one that came after it. */
    private long firstArrivalNs;
    /** Before which no more edges can come from any line without one that waits. */
    private long othersQuietNs;
    private long lastNs = Long.MIN_VALUE;
    private volatile long settledNs = Long.MIN_VALUE;
    private boolean sinkFailed;

    EdgeMerger(List<LineReader> lines, EdgeSink sink) {
        this.lines = lines;
        this.sink = sink;
        quietNs = new long[lines.size()];
        Arrays.fill(quietNs, Long.MIN_VALUE);
    }

    /**
     * Hands on one edge, if one may go, or how far time has got.
     *
     * @return for how long there is nothing to do then unless an edge comes, ns; 0 where there may be more
     */
    long turn(long nowNs) {
        // Asked before the rings are looked at: an edge from before these times is in its ring by now.
        for (int i = 0; i < quietNs.length; i++) {
            ask(i, nowNs);
        }
        look();
        if (first < 0) {
            settle(Math.max(othersQuietNs, nowNs - SILENCE_MAX_NS));
            return IDLE_NS;
        }
        long timeNs = lines.get(first).ring().headTimeNs();
        if (othersQuietNs < timeNs && nowNs - firstArrivalNs < SILENCE_MAX_NS) {
            return Math.max(timeNs + QUEUED_WITHIN_NS - nowNs, ASK_AGAIN_NS);
        }
        handOn(first);
        return 0;
    }

    /** No edge earlier than this will be handed on any more. Any thread. */
    long settledNs() {
        return settledNs;
    }

    private void ask(int i, long nowNs) {
        LineReader line = lines.get(i);
        LineCounters counters = line.counters();
        boolean isQuiet = line.isQuiet() || counters.aliveNs() < nowNs - SILENCE_MAX_NS;
        quietNs[i] = Math.max(quietNs[i], Math.max(counters.settledNs(), isQuiet ? nowNs - QUEUED_WITHIN_NS : Long.MIN_VALUE));
    }

    /** Hands on all that is left, once no line is read any more. */
    void drain() {
        for (look(); first >= 0; look()) {
            handOn(first);
        }
    }

    /** Looks into each ring once: an edge that comes meanwhile is either seen, or its line counts as one without. */
    private void look() {
        first = -1;
        firstArrivalNs = Long.MAX_VALUE;
        othersQuietNs = Long.MAX_VALUE;
        for (int i = 0; i < quietNs.length; i++) {
            EdgeRing ring = lines.get(i).ring();
            if (ring.isEmpty()) {
                othersQuietNs = Math.min(othersQuietNs, quietNs[i]);
            } else {
                firstArrivalNs = Math.min(firstArrivalNs, ring.headArrivalNs());
                if (first < 0 || ring.headTimeNs() < lines.get(first).ring().headTimeNs()) {
                    first = i;
                }
            }
        }
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

    private void settle(long quietNs) {
        long timeNs = wholeUnits(quietNs);
        if (timeNs > lastNs) {
            lastNs = timeNs;
            settledNs = timeNs;
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
