package org.cupbeam.studio.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.cupbeam.studio.Mosquitto;
import org.cupbeam.studio.PostgresServer;

/** One fleet at work for a while, and what came of it. */
final class FleetRun implements AutoCloseable {
    private static final int WIRES = 8;
    private static final int WARM_UP_S = 15;
    private static final int SETTLE_S = 60;
    private static final long SEED = 200;
    /** As the recipe in docs/mosquitto has it. */
    private static final String PROMPT = "set_tcp_nodelay true\n";
    private static final String SIZE = "SELECT pg_database_size(current_database())";

    /** What a run came to; processor time in parts of one core, 0 of what was killed meanwhile. */
    record Result(int lanes, int puttsPerMinute, double eventsPerS, double[] ms, long sent, long stored, long missing, double host, double postgres,
                  double mosquitto, double own, double hostMb, double bytesPerEvent, int neverShown, double load) {
        double p99Ms() {
            return at(0.99);
        }

        private double at(double part) {
            return ms.length == 0 ? Double.NaN : ms[(int) Math.ceil(part * ms.length) - 1];
        }

        String row() {
            return String.format(Locale.ROOT, "| %d | %d | %.0f | %.1f | %.1f | %.0f | %.0f | %.0f | %.0f | %.0f | %.0f | %d of %d | %.1f |", lanes,
                    puttsPerMinute, eventsPerS, at(0.5), p99Ms(), at(1), 100 * host, 100 * postgres, 100 * mosquitto, 100 * own, hostMb,
                    stored, sent, load);
        }

        @Override
        public String toString() {
            return row() + String.format(Locale.ROOT, "%nnoted as missing %d; never shown on a board %d; PostgreSQL's disk %.0f "
                    + "bytes an event; shown within 250 ms: %.1f %%", missing, neverShown, bytesPerEvent, 100.0
                    * Arrays.stream(ms).filter(each -> each <= 250).count() / Math.max(1, ms.length));
        }
    }

    private final Path folder;
    private final int puttsPerMinute;
    private final String store = PostgresServer.emptyDatabase();
    private final List<FleetLane> lanes = new ArrayList<>();
    private final List<FleetWire> wires = new ArrayList<>();
    private final List<OpenBoard> boards = new ArrayList<>();
    private final int port;
    private final int heapMb;
    private final long emptyBytes;
    private Mosquitto broker;
    private HostProcess host;
    private long sent;

    /** @param puttsPerMinute of each lane; @param heapMb what the host may take */
    FleetRun(Path folder, int count, int puttsPerMinute, int heapMb) throws Exception {
        this.folder = folder;
        this.heapMb = heapMb;
        this.puttsPerMinute = puttsPerMinute;
        broker = new Mosquitto(0, PROMPT);
        port = Integer.parseInt(broker.uri().replaceAll(".*:", ""));
        Random random = new Random(SEED);
        IntStream.range(0, count).forEach(i -> lanes.add(new FleetLane(i, random)));
        for (int i = 0; i < WIRES; i++) {
            int wire = i;
            wires.add(new FleetWire(broker.uri(), "lanes-" + i, IntStream.range(0, count).filter(n -> n % WIRES == wire)
                    .mapToObj(lanes::get).toList()));
            wires.get(i).connect();
        }
        startHost();
        emptyBytes = ask(SIZE);
    }

    Result play(int seconds, boolean kills) throws Exception {
        putt(WARM_UP_S, false, false);
        long before = sent;
        Duration[] cpu = cpu();
        long beganNs = System.nanoTime();
        putt(seconds, true, kills);
        double tookS = (System.nanoTime() - beganNs) / 1e9;
        Duration[] after = cpu();
        long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(SETTLE_S);
        while (lanes.stream().anyMatch(each -> each.unstored() > 0) && System.nanoTime() < endNs) {
            TimeUnit.MILLISECONDS.sleep(500);
            wires.forEach(FleetWire::sendOverdue);
        }
        if (kills) {
            cpu[0] = after[0]; // of other processes than at the beginning: not told
            cpu[2] = after[2];
        }
        double[] parts = IntStream.range(0, cpu.length).mapToDouble(i -> after[i].minus(cpu[i]).toNanos() / 1e9 / tookS).toArray();
        double[] ms = lanes.stream().flatMap(each -> each.arrivals.all().stream()).mapToDouble(Double::doubleValue).sorted().toArray();
        long stored = ask("SELECT count(*) FROM event");
        return new Result(lanes.size(), puttsPerMinute, (sent - before) / tookS, ms, sent, stored, ask("SELECT count(*) FROM missing"), parts[0],
                parts[1], parts[2], parts[3], host.residentMb("VmRSS"),
                (double) (ask(SIZE) - emptyBytes) / Math.max(1, stored),
                lanes.stream().mapToInt(each -> each.arrivals.missing()).sum(), FleetBench.load());
    }

    /** All lanes putt evenly one after the other; whoever is late does not slow the next. */
    private void putt(int seconds, boolean timed, boolean kills) throws Exception {
        long startNs = System.nanoTime();
        long eachNs = TimeUnit.MINUTES.toNanos(1) / puttsPerMinute / lanes.size();
        long putts = TimeUnit.SECONDS.toNanos(seconds) / eachNs;
        long sweptNs = startNs;
        for (long i = 0; i < putts; i++) {
            if (kills && (i == putts / 5 || i == putts * 3 / 5)) {
                beside(this::killHost);
            } else if (kills && i == putts * 2 / 5) {
                beside(this::killBroker);
            }
            for (long waitNs = startNs + i * eachNs - System.nanoTime(); waitNs > 0; waitNs = startNs + i * eachNs - System.nanoTime()) {
                TimeUnit.NANOSECONDS.sleep(waitNs);
            }
            int number = (int) (i % lanes.size());
            List<SyntheticLane.Said> putt = lanes.get(number).putt(timed);
            sent += putt.size();
            wires.get(number % WIRES).send(lanes.get(number), putt);
            if (System.nanoTime() - sweptNs > TimeUnit.SECONDS.toNanos(1)) {
                wires.forEach(FleetWire::sendOverdue);
                sweptNs = System.nanoTime();
            }
        }
    }

    private interface Deed {
        void run() throws Exception;
    }

    private static void beside(Deed deed) {
        Thread thread = new Thread(() -> {
            try {
                deed.run();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        }, "deed");
        thread.setDaemon(true);
        thread.start();
    }

    private void killHost() throws IOException {
        host.handle().destroyForcibly();
        FleetBench.say("the host is killed");
        startHost();
        FleetBench.say("the host is back, its boards open");
    }

    private void killBroker() throws Exception {
        broker.kill();
        FleetBench.say("Mosquitto is killed, and what it held is gone");
        broker = new Mosquitto(port, PROMPT);
    }

    private void startHost() throws IOException {
        host = new HostProcess(folder, broker.uri(), List.of("-Xmx" + heapMb + "m"), List.of("--store", store));
        boards.clear();
        for (FleetLane each : lanes) {
            boards.add(new OpenBoard(host.port, each.topics, each.arrivals));
        }
    }

    /** Processor time of the host, of the database, of the broker, of this program. */
    private Duration[] cpu() throws Exception {
        Duration postgres = Duration.ZERO;
        try (Connection connection = DriverManager.getConnection(store); Statement statement = connection.createStatement();
             ResultSet pids = statement.executeQuery("SELECT pid FROM pg_stat_activity")) {
            while (pids.next()) {
                postgres = postgres.plus(ProcessHandle.of(pids.getLong(1)).map(FleetRun::cpu).orElse(Duration.ZERO));
            }
        }
        return new Duration[] {cpu(host.handle()), postgres, cpu(broker.handle()), cpu(ProcessHandle.current())};
    }

    private static Duration cpu(ProcessHandle process) {
        return process.info().totalCpuDuration().orElse(Duration.ZERO);
    }

    private long ask(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(store); Statement statement = connection.createStatement();
             ResultSet found = statement.executeQuery(sql)) {
            found.next();
            return found.getLong(1);
        }
    }

    @Override
    public void close() throws IOException {
        host.close();
        broker.close();
    }
}
