package org.cupbeam.bench;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/** A putt that drops, as a standard rig on a level green sees it: its last edge, when the ball is past the cup's sensor, decides. */
final class HoledPutt {
    private static final double SPEED_MM_PER_S = 1500;
    private static final double HALF_BLOCKED_MM = 21.3;
    private static final long FALL_NS = 80_000_000;
    /** How long the cup's sensor sees the ball. */
    static final long IN_CUP_NS = 30_000_000;

    /** One edge, its time in ns since the first. */
    record Edge(int channel, boolean active, long timeNs) {
    }

    private HoledPutt() {
    }

    static List<Edge> edges(Rig rig) {
        double deceleration = GreenSpeed.levelDecelerationMmPerS2(rig.stimpFt());
        double startMm = rig.beams().get(0).positionMm() - HALF_BLOCKED_MM;
        List<Edge> edges = new ArrayList<>();
        for (Beam beam : rig.beams()) {
            if (beam.positionMm() < 0) {
                edges.add(new Edge(beam.channel(), true, timeNs(beam.positionMm() - HALF_BLOCKED_MM - startMm, deceleration)));
                edges.add(new Edge(beam.channel(), false, timeNs(beam.positionMm() + HALF_BLOCKED_MM - startMm, deceleration)));
            }
        }
        int cup = rig.channelOf(Channel.Kind.CUP);
        long dropNs = timeNs(-startMm, deceleration) + FALL_NS;
        edges.add(new Edge(cup, true, dropNs));
        edges.add(new Edge(cup, false, dropNs + IN_CUP_NS));
        return edges;
    }

    /** Constant deceleration: s = v·t − a·t²/2, solved for t. */
    private static long timeNs(double mm, double deceleration) {
        double s = (SPEED_MM_PER_S - Math.sqrt(SPEED_MM_PER_S * SPEED_MM_PER_S - 2 * deceleration * mm)) / deceleration;
        return Math.round(s * 1e9);
    }

    static void play(List<Edge> edges, long fromNs, EdgeSink sink) {
        edges.forEach(each -> sink.edge(each.channel(), each.active(), fromNs + each.timeNs()));
    }
}
