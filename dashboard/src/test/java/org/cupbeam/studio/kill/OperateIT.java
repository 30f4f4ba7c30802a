package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.Tools;
import org.cupbeam.studio.store.Migrations;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * What an operator does to a store in PostgreSQL while a lane keeps sending: copies it and starts from the copy, by the commands of
 * docs/operate.md; brings an earlier version's up to date. Lane, Mosquitto, host and server are real processes.
 */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class OperateIT {
    private static final Pattern COMMAND = Pattern.compile("(?m)^ {4}((?:pg_dump|createdb|pg_restore) .*)$");
    private static final int FEW = 20;

    @TempDir
    private Path folder;
    private Fleet fleet;
    private Program lane;
    private String store = PostgresServer.emptyDatabase();

    @BeforeEach
    void needsItsTools() {
        if (!Files.isExecutable(PostgresServer.bin().resolve("pg_dump"))) {
            Tools.missing("PostgreSQL's pg_dump");
        }
    }

    @Test
    void aCopyMadeWhileALaneSendsIsGoneOnWithAndTheLaneFillsTheRest() throws Exception {
        List<String> commands = COMMAND.matcher(Files.readString(Path.of("..", "docs", "operate.md"))).results()
                .map(each -> each.group(1)).toList();
        assertThat(commands).extracting(each -> each.substring(0, each.indexOf(' '))).containsExactly("pg_dump", "createdb", "pg_restore");
        try (Fleet all = begin(); Program its = lane; Program before = all.host("before", store, Fleet.freePort())) {
            start(before);
            Fleet.until(its::said, 60, () -> events() >= FEW);
            type(commands.get(0));
            int afterTheDump = events();
            Fleet.until(its::said, 60, () -> events() >= afterTheDump + FEW);
            assertThat(before.end()).as("the host is stopped").isEqualTo(128 + 15);
            int lost = events();
            type(commands.get(1));
            type(commands.get(2));
            store = store.replaceFirst("/test\\d+", "$0_restored");
            assertThat(events()).as("the copy is of an earlier moment").isPositive().isLessThan(lost);
            try (Program after = all.host("after", store, Fleet.freePort())) {
                start(after);
                allIsKept(after);
            }
            System.out.printf("dumped at %d events or before, restored at %s told to its lane, %d by then%n", afterTheDump, lost, events());
        }
    }

    @Test
    void aStoreOfAnEarlierVersionIsBroughtUpToDateWhileALaneSends() throws Exception {
        String earlier = Integer.toString(Integer.parseInt(Migrations.LATEST) - 4);
        Flyway.configure().dataSource(store, null, null).locations("classpath:db/studio").target(earlier).load().migrate();
        try (Fleet all = begin(); Program its = lane; Program host = all.host("newer", store, Fleet.freePort())) {
            Fleet.until(its::said, 60, () -> Kept.events(all.journal()).size() >= FEW);
            wroteInItsDay(Kept.events(all.journal()).subList(0, FEW / 2));
            int sentBefore = Kept.events(all.journal()).size();
            start(host);
            assertThat(ask("SELECT max(CAST(version AS INTEGER)) FROM flyway_schema_history")).isEqualTo(Migrations.LATEST);
            Fleet.until(host::said, 60, () -> events() >= sentBefore + FEW);
            allIsKept(host);
        }
    }

    private Fleet begin() throws Exception {
        Path rig = Files.writeString(folder.resolve("rig.toml"), SoakIT.RIG);
        fleet = new Fleet(folder);
        lane = fleet.lane(() -> List.of("--rig", rig.toString(), "--practice", "--speed", "40", "--seed", "20"));
        fleet.broker.start();
        start(lane);
        return fleet;
    }

    private static void start(Program program) throws Exception {
        program.start();
        Fleet.until(program::said, 90, () -> program.readyNs() != 0);
    }

    /** What an earlier version had of a lane, in the columns that it knew. */
    private void wroteInItsDay(List<byte[]> payloads) throws Exception {
        try (Connection to = DriverManager.getConnection(store); Statement statement = to.createStatement();
             PreparedStatement event = to.prepareStatement("INSERT INTO event (journal_id, sequence, type, boot_id, monotonic_ns, "
                     + "synchronised, at_ms, received_ms, envelope) VALUES (1, ?, ?, 1, ?, 1, ?, ?, ?)")) {
            Event first = EventJson.decode(payloads.get(0));
            statement.execute("INSERT INTO studio (id, name) VALUES (1, '" + first.source().studio() + "')");
            statement.execute("INSERT INTO lane (id, studio_id, name) VALUES (1, 1, '" + first.source().lane() + "')");
            statement.execute("INSERT INTO journal (id, lane_id, name, stored, seen_ms) VALUES (1, 1, '" + first.source().journal() + "', "
                    + payloads.size() + ", 0)");
            statement.execute("INSERT INTO boot (id, journal_id, name, first_sequence) VALUES (1, 1, '" + first.data().stamp().boot() + "', 1)");
            for (byte[] each : payloads) {
                Event is = EventJson.decode(each);
                event.setLong(1, is.sequence());
                event.setString(2, is.data().type());
                event.setLong(3, is.data().stamp().monotonicNs());
                event.setLong(4, is.time().toEpochMilli());
                event.setLong(5, is.time().toEpochMilli());
                event.setString(6, new String(each, StandardCharsets.UTF_8));
                event.executeUpdate();
            }
        }
    }

    /** The store against the lane's journal, byte for byte, each event once. */
    private void allIsKept(Program host) throws Exception {
        int due = Kept.events(fleet.journal()).size();
        Fleet.until(() -> "event " + due + " is kept, as its lane sends it again\n" + host.said() + lane.said(), 60,
                () -> events() >= due);
        assertThat(lane.end()).isEqualTo(128 + 15);
        List<String> journal = Kept.events(fleet.journal()).stream().map(each -> new String(each, StandardCharsets.UTF_8)).toList();
        Fleet.until(() -> "the last of " + journal.size() + " is kept", 30, () -> events() == journal.size());
        assertThat(rows("SELECT envelope FROM event ORDER BY sequence")).isEqualTo(journal);
        assertThat(rows("SELECT count(*) FROM missing UNION ALL SELECT count(*) FROM dead_letter UNION ALL "
                + "SELECT count(*) FROM event WHERE problem IS NOT NULL")).containsOnly("0");
        assertThat(rows("SELECT sequence FROM attempt WHERE sequence > " + FEW / 2 + " ORDER BY sequence")).isEqualTo(rows(
                "SELECT sequence FROM event WHERE type LIKE '%attempt%' AND sequence > " + FEW / 2 + " ORDER BY sequence"));
    }

    /** With this server's address in place of the recipe's. */
    private void type(String command) throws Exception {
        String server = store.substring("jdbc:".length(), store.lastIndexOf('/'));
        String name = store.replaceAll(".*/|\\?.*", "");
        String typed = command.replace("postgresql://db", server).replaceAll("\\bcupbeam2\\b", name + "_restored")
                .replace("/cupbeam?", "/" + name + "?");
        Process process = new ProcessBuilder("sh", "-c", PostgresServer.bin() + "/" + typed).directory(folder.toFile())
                .redirectErrorStream(true).redirectOutput(folder.resolve("said").toFile()).start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(typed + ": " + Files.readString(folder.resolve("said"))).isZero();
    }

    private int events() throws SQLException {
        return Integer.parseInt(ask("SELECT count(*) FROM event"));
    }

    private String ask(String sql) throws SQLException {
        return rows(sql).get(0);
    }

    private List<String> rows(String sql) throws SQLException {
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
