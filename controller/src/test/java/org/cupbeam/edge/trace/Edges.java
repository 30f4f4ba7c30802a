package org.cupbeam.edge.trace;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;

/** Gathers edges as text, such as {@code cup on 1000}. */
final class Edges implements EdgeSink {
    final List<String> all = new ArrayList<>();
    private final Rig rig;

    Edges(Rig rig) {
        this.rig = rig;
    }

    @Override
    public void edge(int channel, boolean active, long timeNs) {
        all.add(rig.channels().get(channel).name() + (active ? " on " : " off ") + timeNs);
    }

    /** Reads a whole trace; its last time is the last entry. */
    static List<String> of(String trace, Rig rig) throws IOException {
        Edges edges = new Edges(rig);
        byte[] bytes = trace.getBytes(StandardCharsets.UTF_8);
        try (VcdReader reader = new VcdReader(new ByteArrayInputStream(bytes), "t.vcd", rig)) {
            reader.drainTo(edges);
            edges.all.add("end " + reader.timeNs());
        }
        return edges.all;
    }
}
