package org.cupbeam.studio;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.edge.trace.VcdReader.Step;
import org.cupbeam.event.Topics;
import org.cupbeam.lane.Lane;
import org.cupbeam.lane.LaneSettings;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.link.LinkOptions;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;

/**
 * A whole lane whose edges are those of a recorded trace, and whose clock is the trace's: time passes when a test says so,
 * as far as it says, and quicker than it did. Between two putts it stands still for as long as somebody likes.
 */
final class TracedLane implements EdgeSource {
    /** How many times as fast as it was recorded; not so fast that a thread held up for a moment is a beam held dark. */
    private static final int TIMES = 10;
    private static final long STEP_NS = 20_000_000;

    private final AtomicLong timeNs = new AtomicLong();
    private final VcdReader trace;
    private final Lane lane;
    private EdgeSink sink;
    private boolean waiting;

    /** @param recorded a folder of the reference data, with a rig and a trace */
    TracedLane(Topics topics, Path recorded, Path folder, String broker) throws Exception {
        Rig rig = RigFile.read(recorded.resolve("rig.toml"));
        trace = VcdReader.open(recorded.resolve("trace.vcd"), rig);
        lane = Lane.open(LaneSettings.of(topics, rig, folder.resolve("lane.db")),
                Surroundings.ofThisMachine("test").at(timeNs::get, TIMES), LinkOptions.open(broker));
        lane.start(this);
    }

    /** Lets the trace run to so many seconds from its beginning. */
    void playTo(double untilS) throws Exception {
        long untilNs = Math.round(untilS * 1e9);
        while (timeNs.get() < untilNs) {
            long next = Math.min(untilNs, timeNs.get() + STEP_NS);
            edgesTo(next);
            timeNs.set(next); // only now, so that no time is settled before its edges are there
            TimeUnit.NANOSECONDS.sleep(STEP_NS / TIMES);
        }
    }

    private void edgesTo(long untilNs) throws IOException {
        while (waiting || trace.next() == Step.EDGE) {
            waiting = trace.timeNs() > untilNs;
            if (waiting) {
                return;
            }
            sink.edge(trace.channel(), trace.active(), trace.timeNs());
        }
    }

    @Override
    public void start(EdgeSink to) {
        sink = to;
    }

    /** Ends the lane, and with it this. */
    void end() {
        lane.close();
    }

    @Override
    public void close() {
        try {
            trace.close();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
