package org.cupbeam.edge.practice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;

/** An evening on a simulated lane: what its sensors said, and what truly happened. */
public final class Evening {
    private final Rig rig;
    private final Edges edges;
    private final long endNs;
    private final List<Truth> truths;

    private Evening(Rig rig, Edges edges, long endNs, List<Truth> truths) {
        this.rig = rig;
        this.edges = edges;
        this.endNs = endNs;
        this.truths = List.copyOf(truths);
    }

    /**
     * Simulates one.
     *
     * @param seed  the same seed gives the same evening, bit for bit
     * @param lane  the lane, its errors and its player
     * @param putts how many, 0 or more
     */
    public static Evening simulate(long seed, PracticeLane lane, int putts) {
        Dice stations = new Dice(seed).split().split();
        LivingLane living = new LivingLane(seed, lane);
        Edges edges = new Edges();
        List<Truth> truths = new ArrayList<>();
        for (int i = 0; i < putts; i++) {
            living.play(edges);
            double fromMm = stations.pick(lane.stationsMm());
            truths.add(living.putt(fromMm, lane.player()));
        }
        living.playOut(edges);
        return new Evening(lane.rig(), edges, Math.max(living.nextStrikeNs(), edges.lastNs()), truths);
    }

    /** What is fitted, as the rig file says. */
    public Rig rig() {
        return rig;
    }

    /** The putts, in the order in which they were struck. */
    public List<Truth> truths() {
        return truths;
    }

    /** How many edges there are. */
    public int edgeCount() {
        return edges.count;
    }

    /** When it ended, ns after it began. */
    public long endNs() {
        return endNs;
    }

    /** Hands every edge to a sink, in order of time, and tells it when the evening ended. */
    public void play(EdgeSink sink) {
        for (int i = 0; i < edges.count; i++) {
            sink.edge(edges.channels[i], edges.active[i], edges.timesNs[i]);
        }
        sink.settled(endNs);
    }

    /** Edges, kept without an object for each. */
    private static final class Edges implements EdgeSink {
        private long[] timesNs = new long[1024];
        private int[] channels = new int[1024];
        private boolean[] active = new boolean[1024];
        private int count;

        long lastNs() {
            return count == 0 ? 0 : timesNs[count - 1];
        }

        @Override
        public void edge(int channel, boolean isActive, long timeNs) {
            if (count == timesNs.length) {
                timesNs = Arrays.copyOf(timesNs, 2 * count);
                channels = Arrays.copyOf(channels, 2 * count);
                active = Arrays.copyOf(active, 2 * count);
            }
            timesNs[count] = timeNs;
            channels[count] = channel;
            active[count++] = isActive;
        }
    }
}
