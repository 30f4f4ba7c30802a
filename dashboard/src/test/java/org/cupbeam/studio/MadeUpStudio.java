package org.cupbeam.studio;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.cupbeam.event.Health;
import org.cupbeam.event.Health.Sensor;
import org.cupbeam.event.Health.Sensor.Condition;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;

/** A studio with a made-up year behind it: a duel is on at one lane, another needs somebody, a third is out of reach. */
final class MadeUpStudio implements AutoCloseable {
    static final String LANE = "home/lane-1";
    private static final Instant NOW = Pages.NOW.instant();
    private static final long SEED = 20261125;

    final Pages pages;
    final long player;
    final long run;

    /** @param size of the year behind it */
    MadeUpStudio(Path folder, Size size) throws IOException {
        pages = new Pages(folder);
        Seed.fill(pages.store, NOW, SEED, size);
        JsonNode newest = pages.get("/api/runs").at("/rows/0");
        run = newest.path("id").asLong();
        player = newest.at("/player/id").asLong();
        lives(1);
    }

    /** What the lanes say now. @param connection more than in what they said before */
    void lives(long connection) {
        pages.lanes.score(new Topics("home", "lane-1"), Scenes.duel(false));
        pages.lanes.health(new Topics("home", "lane-1"), online(connection, "north1", List.of(),
                beam("near-1", Condition.CLEAR, 3.1), beam("far-1", Condition.CLEAR, 41), beam("far-2", Condition.CLEAR, 41)));
        pages.lanes.score(new Topics("home", "window"), Scenes.free(Scenes.HOLED));
        pages.lanes.health(new Topics("home", "window"), online(connection, "window1",
                List.of("beam far-1 is blocked all the time"), beam("near-1", Condition.CLEAR, 2),
                beam("far-1", Condition.STUCK, 900), beam("far-2", Condition.CHATTERING, 0.4)));
        pages.lanes.health(new Topics("home", "stairs"), Scenes.lost(connection));
    }

    private static Health online(long connection, String journal, List<String> faults, Sensor... sensors) {
        return new Health(Health.State.ONLINE, connection, "boot-1", new Health.Report(journal, "0.1.0", NOW,
                Stamp.Clock.SYNCHRONISED, 0, 0, List.of(sensors), faults));
    }

    private static Sensor beam(String name, Condition condition, double agoS) {
        return new Sensor(name, Sensor.Kind.BEAM, condition, agoS, agoS < 30 ? 2 : 0);
    }

    @Override
    public void close() {
        pages.close();
    }
}
