package org.cupbeam.edge.practice;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import org.cupbeam.edge.EdgeSink;

/** A lane played as time passes: whoever drives it says how far time has come, and gets the edges up to then. */
final class Performance {
    private static final long ASK_AGAIN_NS = 500_000_000;

    private record Edge(int channel, boolean active, long timeNs) {
    }

    private final LivingLane lane;
    private final long startNs;
    private final DoubleSupplier stationMm;
    private final Supplier<Player> player;
    private final Consumer<Truth> told;
    private final Deque<Edge> waiting = new ArrayDeque<>();
    private long settledNs;

    /**
     * A performance about to begin.
     *
     * @param lane      the lane
     * @param startNs   when it begins, on the clock that its edges are stamped with
     * @param stationMm where the next putt is from; NaN or 0 while nobody putts, below 0 while balls are rolled by hand
     *                  through all beams; asked as the putt is struck
     * @param player    who putts it
     * @param told      is told what truly happened, as soon as a putt is struck
     */
    Performance(LivingLane lane, long startNs, DoubleSupplier stationMm, Supplier<Player> player,
                Consumer<Truth> told) {
        this.lane = lane;
        this.startNs = startNs;
        settledNs = startNs;
        this.stationMm = stationMm;
        this.player = player;
        this.told = told;
    }

    /** When something happens next: an edge, or a putt. */
    long nextNs() {
        return waiting.isEmpty() ? startNs + lane.nextStrikeNs() : waiting.peek().timeNs();
    }

    /** Goes on up to this time, inclusive, and says how far the edges are settled. */
    void playTo(long nowNs, EdgeSink sink) {
        while (nextNs() <= nowNs) {
            if (waiting.isEmpty()) {
                putt();
            } else {
                Edge edge = waiting.poll();
                sink.edge(edge.channel(), edge.active(), edge.timeNs());
            }
        }
        settledNs = Math.max(settledNs, Math.min(nowNs, startNs + lane.nextStrikeNs() - Wire.SLACK_NS));
        sink.settled(settledNs);
    }

    private void putt() {
        double fromMm = stationMm.getAsDouble();
        if (fromMm > 0) {
            told.accept(lane.putt(fromMm, player.get()));
        } else if (fromMm < 0) {
            lane.roll();
        } else {
            lane.pass(ASK_AGAIN_NS);
        }
        lane.play((channel, active, timeNs) -> waiting.add(new Edge(channel, active, startNs + timeNs)));
    }
}
