package org.cupbeam.bench;

import org.cupbeam.edge.EdgeSink;
import org.cupbeam.track.Attempt;
import org.cupbeam.track.TrackSink;

/** Takes what there is, and only counts it; the last attempt it keeps for a while, as anybody would. */
final class Count implements EdgeSink, TrackSink {
    long edges;
    long attempts;
    private Object last;

    @Override
    public void edge(int channel, boolean active, long timeNs) {
        edges++;
    }

    @Override
    public void attempt(Attempt attempt) {
        attempts++;
        last = attempt;
    }

    void line(String line) {
        attempts++;
        last = line;
    }

    Object last() {
        return last;
    }
}
