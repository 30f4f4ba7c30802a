package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.cupbeam.studio.PostgresServer;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two hosts, one Mosquitto, one PostgreSQL, and a lane on a simulated green: the host that keeps the events is killed
 * (signal 9), or stands still (SIGSTOP) and comes back. All are real processes.
 */
@Timeout(value = 15, unit = TimeUnit.MINUTES)
class SharedStoreIT {
    private static final int ROUNDS = Integer.getInteger("cupbeam.rounds", Boolean.getBoolean("cupbeam.nightly") ? 20 : 0);

    private record Served(Program program, int port, Path data) {
        String id() throws Exception {
            return "cupbeam-host-" + Files.readString(data.resolve("host-id"));
        }
    }

    @TempDir
    private Path folder;
    private final String store = PostgresServer.emptyDatabase();
    private final List<String> took = new ArrayList<>();
    private List<Served> hosts;

    @Test
    void theOtherHostGoesOnWithinTenSecondsAndNothingIsKeptTwice() throws Exception {
        try (Fleet fleet = new Fleet(folder); Program lane = lane(fleet); Program north = host(fleet, "north");
             Program south = host(fleet, "south")) {
            begin(fleet, lane, north, south);
            followerIsLive();
            Served victim = holder();
            victim.program().kill();
            othersGoOn(victim);
            allIsKept(fleet, lane);
        }
        System.out.println("another host went on after, s: " + took);
    }

    @Test
    void killedAndHeldUpAgainAndAgain() throws Exception {
        Assumptions.assumeTrue(ROUNDS > 0, "takes minutes: in the nightly profile, or with cupbeam.rounds");
        try (Fleet fleet = new Fleet(folder); Program lane = lane(fleet); Program north = host(fleet, "north");
             Program south = host(fleet, "south")) {
            begin(fleet, lane, north, south);
            for (int i = 0; i < ROUNDS; i++) {
                Served victim = holder();
                if (i % 2 == 0) {
                    victim.program().kill();
                    othersGoOn(victim);
                    victim.program().start();
                } else {
                    signal(victim, "-STOP");
                    othersGoOn(victim);
                    signal(victim, "-CONT");
                }
                Fleet.until(victim.program()::said, 60, () -> victim.program().readyNs() != 0);
                followerIsLive();
            }
            allIsKept(fleet, lane);
        }
        System.out.println("killed and held up " + ROUNDS + " times; another host went on after, s: " + took);
    }

    private Program lane(Fleet fleet) throws Exception {
        Path rig = Files.writeString(folder.resolve("rig.toml"), SoakIT.RIG);
        return fleet.lane(() -> List.of("--rig", rig.toString(), "--practice", "--speed", "40", "--seed", "20"));
    }

    private Program host(Fleet fleet, String name) {
        int port = Fleet.freePort();
        Program program = fleet.host(name, store, port);
        List<Served> all = new ArrayList<>(hosts == null ? List.of() : hosts);
        all.add(new Served(program, port, folder.resolve(name)));
        hosts = all;
        return program;
    }

    private void begin(Fleet fleet, Program... programs) throws Exception {
        fleet.broker.start();
        for (Program each : programs) {
            each.start();
        }
        for (Program each : programs) {
            Fleet.until(each::said, 90, () -> each.readyNs() != 0);
        }
        Fleet.until(() -> "events are kept", 60, () -> events() >= 20);
    }

    private Served holder() throws Exception {
        String id = ask("SELECT holder FROM ingest_lease");
        for (Served each : hosts) {
            if (each.id().equals(id)) {
                return each;
            }
        }
        throw new AssertionError("nobody is " + id);
    }

    /** The board of a host that keeps nothing goes on with the lane. */
    private void followerIsLive() throws Exception {
        Served holder = holder();
        Served follower = hosts.stream().filter(each -> each != holder).findAny().orElseThrow();
        long before = Fleet.shown(follower.port()).sequence();
        Fleet.until(() -> "the other host's board goes on from " + before, 30,
                () -> Fleet.shown(follower.port()).sequence() > before);
    }

    private void othersGoOn(Served victim) throws Exception {
        long beganNs = System.nanoTime();
        int before = events();
        Fleet.until(() -> "another goes on from " + before + " events; " + hosts.stream().map(each -> each.program().said())
                .toList(), 30, () -> events() > before + 2 && !holder().equals(victim));
        double tookS = (System.nanoTime() - beganNs) / 1e9;
        took.add(String.format(Locale.ROOT, "%.1f", tookS));
        assertThat(tookS).as("s until another host kept events").isLessThan(10);
    }

    /** The store against the lane's journal, byte for byte. */
    private void allIsKept(Fleet fleet, Program lane) throws Exception {
        int due = Kept.events(fleet.journal()).size();
        Fleet.until(() -> "event " + due + " is kept, as its lane sends it again", 60, () -> events() >= due);
        assertThat(lane.end()).isEqualTo(128 + 15);
        List<String> journal = Kept.events(fleet.journal()).stream().map(each -> new String(each, StandardCharsets.UTF_8)).toList();
        long stored = Long.parseLong(ask("SELECT stored FROM journal"));
        assertThat(stored).isGreaterThanOrEqualTo(due);
        assertThat(rows("SELECT envelope FROM event ORDER BY sequence")).isEqualTo(journal.subList(0, events()));
        assertThat(rows("SELECT count(*) FROM missing UNION ALL SELECT count(*) FROM dead_letter UNION ALL "
                + "SELECT count(*) FROM event WHERE problem IS NOT NULL")).containsOnly("0");
        assertThat(ask("SELECT count(*) FROM attempt")).isEqualTo(ask(
                "SELECT count(*) FROM event WHERE type LIKE '%attempt%'"));
    }

    private static void signal(Served host, String signal) throws Exception {
        assertThat(new ProcessBuilder("kill", signal, "" + host.program().pid()).start().waitFor()).isZero();
    }

    private int events() throws Exception {
        return Integer.parseInt(ask("SELECT count(*) FROM event"));
    }

    private String ask(String sql) throws Exception {
        return rows(sql).get(0);
    }

    private List<String> rows(String sql) throws Exception {
        List<String> rows = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection(store); Statement statement = connection.createStatement();
             ResultSet found = statement.executeQuery(sql)) {
            while (found.next()) {
                rows.add(found.getString(1));
            }
        }
        return rows;
    }
}
