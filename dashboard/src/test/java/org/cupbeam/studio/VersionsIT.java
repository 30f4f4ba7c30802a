package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Event;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Source;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.ingest.Ingest;
import org.cupbeam.studio.ingest.News;
import org.cupbeam.studio.ingest.PahoConnection;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.upkeep.Evenings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Lane and host of different versions, over a real broker: whichever is upgraded first, each putt counts once and in order. */
@Timeout(90)
class VersionsIT {
    @TempDir
    Path folder;
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private final List<Event> said = List.of(lane.starts("r1", null, "Ada", 1), lane.passes(20).holes("r1", null, "Ada", 1),
            lane.passes(20).misses("r1", null, "Ada", 2, 300), lane.passes(20).holes("r1", null, "Ada", 2),
            lane.passes(20).takesBack(lane.sequence()), lane.passes(20).misses("r1", null, "Ada", 2, 200),
            lane.passes(20).ends("r1", null, "Ada", 1, 3, 1, 250));

    /** The older host is this one, but that it knows no corrections, nor a putt that was holed. */
    @Test
    void whatANewerLaneSaysToAnOlderHostCountsInItsPlaceOnceTheHostIsNewer() throws Exception {
        Database database = Database.file(folder.resolve("studio.db"));
        try (Mosquitto broker = new Mosquitto(0); Wire wire = new Wire(broker.uri()).hear("cupbeam/home/one/stored")) {
            try (Store store = Store.open(database); Ingest older = new Ingest(new PahoConnection(broker.uri(), "host"),
                    knowing(new Keeper(store)), nobody(), kept -> { }, Clock.systemUTC(), System::nanoTime, new Random(1))) {
                older.start();
                sayAll(wire);
                awaitStored(wire, 7);
                assertThat(rows(store, "SELECT count(*) FROM event WHERE problem IS NOT NULL")).containsExactly("3");
                assertThat(rows(store, "SELECT count(*) FROM attempt WHERE counts = 1")).containsExactly("2");
            }
            try (Host newer = Host.start(database, broker.uri(), "host", Door.here(0, folder))) {
                assertThat(newer.port()).isPositive();
                wire.say(lane.topic(), ScriptedLane.json(lane.passes(20).puttsOutsideAnyRun()), false);
                awaitStored(wire, 8);
            }
        }
        try (Store store = Store.open(database); Store model = Store.open(Database.file(folder.resolve("model.db")))) {
            assertThat(rows(store, "SELECT sequence || CASE counts WHEN 1 THEN '' ELSE ' taken back' END FROM attempt ORDER BY sequence"))
                    .containsExactly("2", "3", "4 taken back", "6", "8");
            assertThat(rows(store, "SELECT count(*) FROM dead_letter")).containsExactly("0");
            List<Event> all = new ArrayList<>(said);
            new Keeper(model).commit(new Batch(all.stream().map(each -> new Arrival(each.source(), each.sequence(), each.time(), each, null,
                    ScriptedLane.json(each), Clock.systemUTC().instant())).toList(), List.of(), List.of()));
            assertThat(Evenings.story(store).get(2)).as("runs").isEqualTo(Evenings.story(model).get(2));
        }
    }

    /** More keys everywhere than this version knows, and none of those that may be left out. */
    @Test
    void moreKeysThanAreKnownAndFewerThanThereMayBeAreBothUnderstoodAtOnce() throws Exception {
        Database database = Database.file(folder.resolve("studio.db"));
        try (Mosquitto broker = new Mosquitto(0); Wire wire = new Wire(broker.uri()).hear("cupbeam/home/one/stored");
             Host host = Host.start(database, broker.uri(), "host", Door.here(0, folder))) {
            assertThat(host.port()).isPositive();
            for (Event each : said) {
                String text = new String(ScriptedLane.json(each), StandardCharsets.UTF_8);
                String newer = text.replace("\"data\":{", "\"traceparent\":\"x\",\"data\":{\"mood\":{\"of\":[1]},")
                        .replace("\"attempt\":{", "\"attempt\":{\"spin\":0.2,").replace("\"play\":{", "\"play\":{\"hat\":\"red\",");
                String older = text.replaceAll(",\"(reason|finish_sd_mm|speed_at_hole_mm_s|duel)\":null", "")
                        .replaceAll(",\"datacontenttype\":\"[^\"]*\"", "");
                assertThat(newer).isNotEqualTo(text);
                assertThat(older).isNotEqualTo(text);
                wire.say(lane.topic(), (each.sequence() % 2 == 0 ? newer : older).getBytes(StandardCharsets.UTF_8), false);
            }
            awaitStored(wire, 7);
        }
        try (Store store = Store.open(database)) {
            assertThat(rows(store, "SELECT count(*) FROM event WHERE problem IS NOT NULL")).containsExactly("0");
            assertThat(rows(store, "SELECT count(*) FROM attempt WHERE counts = 1")).containsExactly("3");
            assertThat(rows(store, "SELECT stations_cleared || ' of ' || attempts FROM run")).containsExactly("1 of 3");
        }
    }

    private static EventLog knowing(Keeper keeper) {
        return new EventLog() {
            @Override
            public List<Kept> kept() {
                return keeper.kept();
            }

            @Override
            public long upTo(Source source) {
                return keeper.upTo(source);
            }

            @Override
            public void commit(Batch batch) {
                keeper.commit(new Batch(batch.arrivals().stream().map(each -> {
                    String text = new String(each.payload(), StandardCharsets.UTF_8);
                    boolean newer = text.contains("correction.v1") || text.contains("\"holed\"") && text.contains("attempt.v1");
                    return newer ? new Arrival(each.source(), each.sequence(), each.time(), null, "type: is not known", each.payload(),
                            each.received()) : each;
                }).toList(), batch.missing(), batch.deadLetters()));
            }
        };
    }

    private static News.Reader nobody() {
        return new News.Reader() {
            @Override
            public void score(Topics from, Score score) {
            }

            @Override
            public void health(Topics from, Health health) {
            }

            @Override
            public void answer(Topics from, Answer answer) {
            }
        };
    }

    private void sayAll(Wire wire) throws Exception {
        for (Event each : said) {
            wire.say(lane.topic(), ScriptedLane.json(each), false);
        }
    }

    /** A lane sends again what is not stored. */
    private void awaitStored(Wire wire, long sequence) throws Exception {
        String like = "{\"journal\":\"j1\",\"sequence\":\"%016d\"}".formatted(sequence);
        for (int tries = 0; tries < 8; tries++) {
            if (wire.heard(like, 3_000)) {
                return;
            }
            sayAll(wire);
        }
        throw new AssertionError("never stored up to " + sequence);
    }

    private static List<String> rows(Store store, String sql) {
        return store.read(h -> h.createQuery(sql).map((row, ctx) -> row.getString(1)).list());
    }
}
