package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.Event;
import org.cupbeam.studio.Host.Place;
import org.cupbeam.studio.ingest.PahoConnection;
import org.cupbeam.studio.ingest.Pass;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A studio's Mosquitto with the bridge of docs/mosquitto to an owner's Mosquitto, over a line that is cut; a host at each. */
@Timeout(120)
class BridgeIT {
    private static final int BEFORE = 20;
    private static final int MEANWHILE = 300;
    private static final int AFTER = 20;
    /** Of the recipe, what differs here: another address, and neither TLS nor names. */
    private static final String NOT_HERE = "(bridge_cafile|remote_username|remote_password|remote_clientid) .*";

    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private final List<Event> sent = new ArrayList<>();
    @TempDir
    Path folder;

    @Test
    void whatTheLanesSendComesToTheCentreOnceThoughTheLineIsCut() throws Exception {
        Assumptions.assumeTrue(Boolean.getBoolean("cupbeam.nightly"), "takes some 10 s: in the nightly profile");
        try (Mosquitto centre = new Mosquitto(0); CutLine line = new CutLine(port(centre));
             Mosquitto studio = new Mosquitto(0, bridge(line.port()));
             Host here = host("studio", studio, false); Wire wire = new Wire(studio.uri()).hear("cupbeam/home/one/stored")) {
            Host owner = host("centre", centre, true);
            try {
                putts(wire, BEFORE);
                awaitAll("centre");
                line.cut();
                putts(wire, MEANWHILE / 2);
                owner.close(); // and the centre's host is away for a while, and comes back before the line does
                putts(wire, MEANWHILE / 2);
                awaitAll("studio");
                assertThat(kept("centre")).as("the line is cut").hasSize(BEFORE);
                owner = host("centre", centre, true);
                line.mend();
                awaitAll("centre");
                line.cut();
                line.mend();
                putts(wire, AFTER);
                awaitAll("centre");
            } finally {
                owner.close();
            }
            assertThat(here.port()).isPositive();
            assertThat(wire.heard("\"sequence\":\"%016d\"}".formatted(sent.size()), 20_000)).as("its own studio's word").isTrue();
        }
        for (String each : List.of("studio", "centre")) {
            assertThat(kept(each)).as(each).isEqualTo(sent.stream().map(Event::sequence).toList());
            assertThat(ask(each, "SELECT count(*) FROM missing UNION ALL SELECT count(*) FROM dead_letter")).containsOnly(0L);
        }
    }

    private void putts(Wire wire, int count) throws Exception {
        for (int i = 0; i < count; i++) {
            Event putt = lane.puttsOutsideAnyRun();
            sent.add(putt);
            wire.say(lane.topic(), ScriptedLane.json(putt), false);
        }
    }

    private void awaitAll(String host) throws Exception {
        for (long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(40); kept(host).size() < sent.size()
                && System.nanoTime() < endNs; ) {
            TimeUnit.MILLISECONDS.sleep(100);
        }
        assertThat(kept(host)).as("at the " + host).hasSize(sent.size());
    }

    private Host host(String name, Mosquitto broker, boolean bridged) throws Exception {
        Path data = Files.createDirectories(folder.resolve(name));
        Host host = Host.start(store(name), new Place("main", name, bridged),
                new PahoConnection(broker.uri(), name, Pass.NONE, bridged), Door.here(0, data));
        awaitReady(host.port());
        return host;
    }

    /** A host that was never at its broker has nothing kept for it there. */
    private static void awaitReady(int port) throws Exception {
        HttpRequest ready = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/ready")).build();
        for (int tries = 0; HttpClient.newHttpClient().send(ready, BodyHandlers.discarding()).statusCode() != 200; tries++) {
            assertThat(tries).as("tries until it is ready").isLessThan(100);
            TimeUnit.MILLISECONDS.sleep(200);
        }
    }

    private Database store(String name) {
        return Database.file(folder.resolve(name).resolve("studio.db"));
    }

    private List<Long> kept(String host) {
        return ask(host, "SELECT sequence FROM event ORDER BY sequence");
    }

    private List<Long> ask(String host, String sql) {
        try (Store store = Store.open(store(host))) {
            return store.read(h -> h.createQuery(sql).mapTo(Long.class).list());
        }
    }

    private static int port(Mosquitto broker) {
        return Integer.parseInt(broker.uri().replaceAll(".*:", ""));
    }

    private static String bridge(int port) throws IOException {
        String recipe = Files.readString(Path.of("..", "docs", "mosquitto", "bridge.conf"));
        assertThat(recipe).contains("address centre:8883", "cupbeam/mill/");
        return recipe.replaceAll("(?m)^" + NOT_HERE + "$", "").replace("centre:8883", "127.0.0.1:" + port)
                .replace("cupbeam/mill/", "cupbeam/home/");
    }
}
