package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.cupbeam.event.Event;
import org.cupbeam.event.HealthJson;
import org.cupbeam.studio.Host.Place;
import org.cupbeam.studio.ingest.PahoConnection;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two sites with a broker and a host each, at one database; a lane goes from one to the other, and back. */
@Timeout(90)
class MovedLaneIT {
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    @TempDir
    Path folder;

    @Test
    void aLaneThatMovesKeepsItsHistoryAndIsHeardAtOnce() throws Exception {
        Database database = Database.at(PostgresServer.emptyDatabase());
        try (Mosquitto north = new Mosquitto(0); Mosquitto south = new Mosquitto(0);
             Host here = host(database, "north", north); Host there = host(database, "south", south);
             Wire atNorth = wire(north); Wire atSouth = wire(south)) {
            sends(atNorth, lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
            awaitStored(atNorth, 2);
            // What is stored is gone from the lane's journal, so the next host is sent only what comes after it.
            sends(atSouth, lane.holes("r1", null, "Ada", 2));
            awaitStored(atSouth, 3);
            sends(atNorth, lane.ends("r1", null, "Ada", 2, 2, 2, Double.NaN));
            awaitStored(atNorth, 4);
            assertThat(here.port()).isNotEqualTo(there.port());
        }
        try (Store store = Store.open(database)) {
            List<String> kept = store.read(h -> h.createQuery("SELECT (SELECT count(*) FROM event) || ' events, ' || "
                    + "(SELECT count(*) FROM missing) || ' missing, run: ' || stations_cleared || ' of ' || attempts FROM run")
                    .mapTo(String.class).list());
            assertThat(kept).as("one run, over").containsExactly("4 events, 0 missing, run: 2 of 2");
        }
    }

    private Host host(Database database, String site, Mosquitto broker) throws Exception {
        Path data = folder.resolve(site);
        return Host.start(database, new Place(site, site, false), new PahoConnection(broker.uri(), site), Door.here(0, data));
    }

    private static Wire wire(Mosquitto broker) throws Exception {
        return new Wire(broker.uri()).hear("cupbeam/home/one/stored");
    }

    private void sends(Wire wire, Event... events) throws Exception {
        wire.say("cupbeam/home/one/health", HealthJson.encode(Scenes.online(1, "j1")), true);
        for (Event each : List.of(events)) {
            wire.say(lane.topic(), ScriptedLane.json(each), false);
        }
    }

    private static void awaitStored(Wire wire, long sequence) throws Exception {
        assertThat(wire.heard("{\"journal\":\"j1\",\"sequence\":\"%016d\"}".formatted(sequence), 20_000))
                .as("stored up to " + sequence).isTrue();
    }
}
