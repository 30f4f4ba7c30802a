package org.cupbeam.board;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.trace.VcdReader;

/** One edge; its time in ns from any zero. */
record Edge(int channel, boolean active, long timeNs) {

    /** All of a trace that are earlier than this. */
    static List<Edge> of(VcdReader trace, long beforeNs) throws IOException {
        List<Edge> edges = new ArrayList<>();
        try (trace) {
            while (trace.next() == VcdReader.Step.EDGE && trace.timeNs() < beforeNs) {
                edges.add(new Edge(trace.channel(), trace.active(), trace.timeNs()));
            }
        }
        return edges;
    }

    /** So many edges of one channel, evenly spaced, the first to active. */
    static List<Edge> wave(int channel, int edges, long apartNs) {
        List<Edge> wave = new ArrayList<>();
        for (int i = 0; i < edges; i++) {
            wave.add(new Edge(channel, i % 2 == 0, i * apartNs));
        }
        return wave;
    }

    /** A ball at 1.5 m/s, holed; the last edge, when it is past the cup's sensor, decides. */
    static List<Edge> holedPutt() {
        long ms = 1_000_000;
        return List.of(new Edge(1, true, 0), new Edge(1, false, 28 * ms), new Edge(2, true, 40 * ms),
                new Edge(2, false, 69 * ms), new Edge(0, true, 310 * ms), new Edge(0, false, 340 * ms));
    }
}
