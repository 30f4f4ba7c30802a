package org.cupbeam.studio.kill;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.studio.Tools;
import org.cupbeam.track.Attempt;
import org.cupbeam.track.TrackSink;
import org.cupbeam.track.Tracker;

/** An evening that was recorded, and what a lane that begins anywhere in it, and is left alone, finds. */
final class RecordedEvening {
    private static final long APART_NS = 400_000_000;

    private record Edge(int channel, boolean active, long timeNs) {
    }

    private final Path folder;
    private final Rig rig;
    private final List<Edge> edges = new ArrayList<>();
    private final List<Long> quiet = new ArrayList<>();
    private long endNs;

    private RecordedEvening(Path folder) throws Exception {
        this.folder = folder;
        rig = RigFile.read(rigFile());
        read();
        List<Attempt> all = from(0);
        for (int i = 1; i < edges.size(); i++) {
            long gapNs = edges.get(i).timeNs - edges.get(i - 1).timeNs;
            long middleNs = edges.get(i - 1).timeNs + gapNs / 2;
            if (gapNs > 2 * APART_NS && !anyActiveAt(i) && all.stream().noneMatch(each ->
                    each.timeNs() - APART_NS < middleNs && middleNs < each.resolvedNs() + APART_NS)) {
                quiet.add(middleNs);
            }
        }
    }

    /** One of the recorded evenings beside the project; without them the test is skipped, or fails where tools are required. */
    static RecordedEvening named(String name) throws Exception {
        return new RecordedEvening(Tools.reference("traces/" + name).toAbsolutePath().normalize());
    }

    private void read() throws IOException {
        try (VcdReader reader = VcdReader.open(trace(), rig)) {
            reader.drainTo((channel, active, timeNs) -> edges.add(new Edge(channel, active, timeNs)));
            endNs = reader.timeNs();
        }
    }

    private boolean anyActiveAt(int edge) {
        boolean[] active = new boolean[rig.channels().size()];
        int count = 0;
        for (Edge each : edges.subList(0, edge)) {
            count += each.active == active[each.channel] ? 0 : each.active ? 1 : -1;
            active[each.channel] = each.active;
        }
        return count > 0;
    }

    Path rigFile() {
        return folder.resolve("rig.toml");
    }

    Path trace() {
        return folder.resolve("trace.vcd");
    }

    double limitMm() {
        return rig.limitMm();
    }

    long endNs() {
        return endNs;
    }

    /** The next moment at which nothing moves on the lane. */
    long quietAfter(long timeNs) {
        return quiet.stream().filter(each -> each >= timeNs).findFirst().orElse(endNs);
    }

    /** What a lane finds whose edges begin here, in the order in which it is settled. */
    List<Attempt> from(long fromNs) {
        List<Attempt> found = new ArrayList<>();
        Tracker tracker = new Tracker(rig, new TrackSink() {
            @Override
            public void attempt(Attempt attempt) {
                found.add(attempt);
            }

            @Override
            public void gesture(Gesture gesture, long timeNs) {
                throw new AssertionError("this rig has no pedal");
            }
        });
        for (Edge each : edges) {
            if (each.timeNs >= fromNs) {
                tracker.edge(each.channel, each.active, each.timeNs);
            }
        }
        tracker.end();
        return found;
    }
}
