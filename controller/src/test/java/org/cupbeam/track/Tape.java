package org.cupbeam.track;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;

/** A rig, and edges of its channels in order of time. */
record Tape(Rig rig, List<Edge> edges) {

    record Edge(int channel, boolean active, long timeNs) {
        @Override
        public String toString() {
            return channel + (active ? " on " : " off ") + timeNs;
        }
    }

    static Tape of(Rig rig, Script script) {
        List<Edge> edges = new ArrayList<>();
        script.edges((channel, active, timeNs) -> edges.add(new Edge(channel, active, timeNs)));
        return new Tape(rig, edges);
    }

    Tape shifted(long ns) {
        return new Tape(rig, edges.stream().map(e -> new Edge(e.channel, e.active, e.timeNs + ns)).toList());
    }

    void play(EdgeSink sink) {
        edges.forEach(each -> sink.edge(each.channel, each.active, each.timeNs));
    }

    Played played() {
        Played played = new Played();
        Tracker tracker = new Tracker(rig, played);
        play(tracker);
        tracker.end();
        return played;
    }

    long rises() {
        return edges.stream().filter(Edge::active).count();
    }
}
