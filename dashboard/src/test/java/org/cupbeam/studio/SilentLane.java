package org.cupbeam.studio;

import java.nio.file.Files;
import java.nio.file.Path;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.event.Topics;
import org.cupbeam.lane.Lane;
import org.cupbeam.lane.LaneSettings;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.link.LinkOptions;
import org.cupbeam.rig.RigFile;

/** A whole lane whose sensors see nothing: it plays what it is told, and only that. */
final class SilentLane implements EdgeSource {
    private static final String RIG = """
            [green]
            stimp_ft = 10.0
            uphill_percent = 0.0
            [overshoot]
            limit_mm = 914.4
            [cup]
            gpio = 17
            """;

    private SilentLane() {
    }

    static Lane start(String name, Path folder, String broker) throws Exception {
        Path rig = Files.writeString(folder.resolve("rig.toml"), RIG);
        Lane lane = Lane.open(LaneSettings.of(new Topics("home", name), RigFile.read(rig), folder.resolve("lane.db")),
                Surroundings.ofThisMachine("test"), LinkOptions.open(broker));
        lane.start(new SilentLane());
        return lane;
    }

    @Override
    public void start(EdgeSink sink) {
        // nothing happens
    }

    @Override
    public void close() {
        // nothing to close
    }
}
