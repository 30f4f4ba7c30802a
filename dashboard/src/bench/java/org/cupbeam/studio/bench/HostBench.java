package org.cupbeam.studio.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Mosquitto;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * One host with 200 lanes at 30 putts a minute each and a board open for each: publish to board, events stored against events
 * sent, what it costs. Mosquitto, SQLite, the packaged host in its own process; the lanes and boards are in this one, so the
 * times include this process's own waits.
 *
 * <p>Arguments: lanes; seconds measured, after 30 of warm-up.
 */
public final class HostBench {
    private static final int CLIENTS = 8;
    private static final int WARM_UP_S = 30;
    private static final long EACH_LANE_NS = TimeUnit.SECONDS.toNanos(2);
    private static final long SEED = 200;

    private final List<SyntheticLane> lanes = new ArrayList<>();
    private final List<OpenBoard> boards = new ArrayList<>();
    private final List<Arrivals> bare = new ArrayList<>();
    private final List<MqttAsyncClient> clients = new ArrayList<>();
    private long sent;
    private long latestNs;

    private HostBench(int count) {
        Random random = new Random(SEED);
        for (int i = 0; i < count; i++) {
            lanes.add(new SyntheticLane(i, random));
            bare.add(new Arrivals());
        }
    }

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("host-bench");
        try (Mosquitto broker = new Mosquitto(0); HostProcess host = new HostProcess(folder, broker.uri())) {
            new HostBench(Integer.parseInt(args[0])).run(broker, host, folder, Integer.parseInt(args[1]));
        } finally {
            try (var files = Files.walk(folder)) {
                for (Path each : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
        System.exit(0);
    }

    private void run(Mosquitto broker, HostProcess host, Path folder, int seconds) throws Exception {
        MqttAsyncClient listener = connect(broker.uri(), "bare");
        listener.subscribe(Topics.everyLane("home", Topics.Kind.SCORE), 1, (topic, message) -> {
            long now = System.nanoTime();
            int lane = Integer.parseInt(topic.replaceAll("\\D", ""));
            bare.get(lane).came(OpenBoard.sequence(new String(message.getPayload(), 0, 200)), now);
        }).waitForCompletion(10_000);
        for (int i = 0; i < CLIENTS; i++) {
            clients.add(connect(broker.uri(), "lanes-" + i));
        }
        for (SyntheticLane each : lanes) {
            boards.add(new OpenBoard(host.port, each.topics));
        }
        play(WARM_UP_S, false);
        latestNs = 0;
        Duration hostCpu = cpu(host.handle());
        Duration ownCpu = cpu(ProcessHandle.current());
        long beganNs = System.nanoTime();
        long before = sent;
        say("seed %d, load %.1f at the start", SEED, load());
        play(seconds, true);
        double tookS = (System.nanoTime() - beganNs) / 1e9;
        say("%d lanes, %.0f s: %.1f events/s, the latest published %.1f ms behind its time", lanes.size(), tookS,
                (sent - before) / tookS, latestNs / 1e6);
        say("host: %.0f %% of one core, %.0f MB resident (peak %.0f) with %s; this process %.0f %%; load %.1f",
                100 * cpu(host.handle()).minus(hostCpu).toNanos() / 1e9 / tookS, host.residentMb("VmRSS"),
                host.residentMb("VmHWM"), String.join(" ", HostProcess.FLAGS),
                100 * cpu(ProcessHandle.current()).minus(ownCpu).toNanos() / 1e9 / tookS, load());
        stored(folder.resolve("studio.db"));
        say("event published to score at board: %s", Arrivals.summary(boards.stream().map(each -> each.arrivals).toList()));
        say("the same to a bare subscriber of the broker: %s", Arrivals.summary(bare));
        say("boards still open: %d", boards.stream().filter(OpenBoard::isOpen).count());
    }

    /** All lanes putt, each every 2 s, evenly one after the other; whoever is late does not slow the next. */
    private void play(int seconds, boolean timed) throws Exception {
        long startNs = System.nanoTime();
        int putts = (int) (seconds * lanes.size() / 2.0);
        for (int i = 0; i < putts; i++) {
            long dueNs = startNs + i * EACH_LANE_NS / lanes.size();
            for (long waitNs = dueNs - System.nanoTime(); waitNs > 0; waitNs = dueNs - System.nanoTime()) {
                TimeUnit.NANOSECONDS.sleep(waitNs);
            }
            latestNs = Math.max(latestNs, System.nanoTime() - dueNs);
            publish(i % lanes.size(), timed);
        }
    }

    private void publish(int number, boolean timed) throws MqttException {
        SyntheticLane lane = lanes.get(number);
        MqttAsyncClient client = clients.get(number % CLIENTS);
        for (SyntheticLane.Said each : lane.putt()) {
            if (timed) {
                long now = System.nanoTime();
                boards.get(number).arrivals.published(each.sequence(), now);
                bare.get(number).published(each.sequence(), now);
            }
            client.publish(lane.topics.event(), each.event(), 1, false);
            client.publish(lane.topics.score(), each.score(), 1, true);
            sent++;
        }
    }

    /** Counted beside the host, which may need a moment for the last. */
    private void stored(Path store) throws Exception {
        long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (ask(store, "SELECT count(*) FROM event") < sent && System.nanoTime() < endNs) {
            TimeUnit.MILLISECONDS.sleep(200);
        }
        long whole = 0;
        for (SyntheticLane each : lanes) {
            long last = each.sequence();
            whole += ask(store, "SELECT count(*) = " + last + " AND min(e.sequence) = 1 AND max(e.sequence) = " + last
                    + " FROM event e JOIN journal j ON j.id = e.journal_id JOIN lane l ON l.id = j.lane_id WHERE l.name = '"
                    + each.topics.lane() + "'");
        }
        say("events sent %d (warm-up included), stored %d; lanes stored whole %d of %d; not understood %d, dead letters %d, "
                + "noted as missing %d", sent, ask(store, "SELECT count(*) FROM event"), whole, lanes.size(),
                ask(store, "SELECT count(*) FROM event WHERE problem IS NOT NULL"),
                ask(store, "SELECT count(*) FROM dead_letter"), ask(store, "SELECT count(*) FROM missing"));
    }

    private static long ask(Path store, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + store);
                Statement statement = connection.createStatement(); ResultSet found = statement.executeQuery(sql)) {
            return found.next() ? found.getLong(1) : -1;
        }
    }

    private static MqttAsyncClient connect(String uri, String name) throws MqttException {
        MqttAsyncClient client = new MqttAsyncClient(uri, name, new MemoryPersistence());
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMaxInflight(10_000);
        client.connect(options).waitForCompletion(10_000);
        return client;
    }

    private static Duration cpu(ProcessHandle process) throws IOException {
        return process.info().totalCpuDuration().orElseThrow(() -> new IOException("no processor time of " + process));
    }

    private static double load() {
        return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    }

    private static void say(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }
}
