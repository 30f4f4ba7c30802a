package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cupbeam.studio.web.Visit;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A lane and a host, each a process, a real Mosquitto, and somebody who forges: nothing is believed that is not the forger's own to say, and play goes on. */
@Timeout(240)
class ForgedIT {
    private static final Path DOCS = Path.of("..", "docs", "mosquitto");
    private static final String RIG = """
            [green]
            stimp_ft = 10
            uphill_percent = 0
            [overshoot]
            limit_mm = 914.4
            [cup]
            gpio = 17
            [[beam]]
            name = "before-1"
            gpio = 22
            position_mm = -300
            height_mm = 21
            [[beam]]
            name = "before-2"
            gpio = 23
            position_mm = -240
            height_mm = 21
            """;
    private static final int HEAP_MB = 48;
    private static final int FLOOD = 400; // of 60 kB each: more than is left of the heap
    private static final String PIN = "739205";
    private static final Map<String, String> SECRETS = Map.of("host's password", "oak-4417-heron", "lane-1's password",
            "elm-9023-otter", "lane-2's password", "ash-6158-raven", "the store's password", "fir-2746-stoat", "the PIN", PIN);

    @TempDir
    private Path folder;
    private Programs programs;
    private String storeUrl;
    private String storePassword;

    @BeforeEach
    void begin() {
        programs = new Programs(folder);
    }

    @AfterEach
    void stop() throws Exception {
        programs.close();
    }

    @Test
    void whatALanesPasswordForgesIsBelievedOfNobodyElseAndNoSecretIsToldByAnyProgram() throws Exception {
        String broker = guardedBroker();
        storePassword = SECRETS.get("the store's password");
        storeUrl = PostgresServer.guardedDatabase(storePassword);
        new StaffPin(Files.createDirectory(folder.resolve("data")).resolve("staff-pin")).set(PIN);
        host(broker, "--username", "host", "--password-file", programs.secret("host", SECRETS.get("host's password")),
                "--store", storeUrl, "--store-password-file", programs.secret("store", storePassword));
        lane("mill", broker, "--username", "lane-1", "--password-file", programs.secret("lane-1", SECRETS.get("lane-1's password")));
        programs.until("putts are stored", () -> putts() > 0);

        try (Wire wire = new Wire(broker, "lane-2", SECRETS.get("lane-2's password"))) {
            Forger thief = new Forger(wire, "mill");
            String journal = text("SELECT j.name FROM journal j JOIN lane l ON l.id = j.lane_id WHERE l.name = 'lane-1'");
            thief.say(thief.topic("lane-1", "event"), thief.event("lane-1", journal, 1_000, Forger.NAME));
            thief.say("cupbeam/other/lane-1/event", thief.event("lane-1", journal, 1_000, Forger.NAME).replace("/mill/", "/other/"));
            thief.say(thief.topic("lane-2", "event"), thief.event("lane-1", journal, 1_000, Forger.NAME));
            thief.command("lane-1");
            thief.stored("lane-1", journal, 1_000_000);
            thief.say(thief.topic("lane-2", "event"), thief.event("lane-2", "j-own", 1, "Ada"));
            thief.say(thief.topic("lane-2", "event"), thief.event("lane-2", "j-own", 1, Forger.NAME));
            thief.say(thief.topic("lane-2", "event"), thief.event("lane-2", "j-own", 9_999_999_999_999_999L, Forger.NAME));
            thief.nonsense("lane-2");
            thief.sayForGood(thief.topic("lane-2", "health"), "{".repeat(60_000).getBytes());
            programs.until("each is told of", () -> reasons().contains("publish it under that lane's own topic")
                    && reasons().contains("no lane is so far ahead") && reasons().contains("says something else")
                    && programs.said("host").contains("says that it is of home/lane-1"));
            thief.flood("lane-2", FLOOD);
        }
        goesOn("mill");
        assertThat(number("SELECT count(*) FROM player WHERE name = '" + Forger.NAME + "'")).as("believed").isZero();
        assertThat(number("SELECT count(*) FROM studio")).isEqualTo(1);
        assertThat(number("SELECT count(*) FROM event e JOIN journal j ON j.id = e.journal_id JOIN lane l ON l.id = j.lane_id "
                + "WHERE l.name = 'lane-2'")).as("its own, the first of that name").isEqualTo(1);
        assertThat(number("SELECT count(*) FROM journal j JOIN lane l ON l.id = j.lane_id WHERE l.name = 'lane-1'")).isEqualTo(1);
        assertThat(programs.said("lane-1")).as("the thief's reach no lane").doesNotContain("retained command", "nothing after");
        isBounded();

        staffComes();
        noSecretIsTold();
    }

    @Test
    void whereABrokerLetsAnybodyInALaneObeysNothingRetainedAndItsNumbersAndFirstWordsStay() throws Exception {
        try (Mosquitto broker = new Mosquitto(0); Wire wire = new Wire(broker.uri())) {
            storeUrl = "jdbc:sqlite:" + folder.resolve("data").resolve("studio.db");
            Forger anybody = new Forger(wire, "home");
            byte[] bomb = "[".repeat(1 << 20).getBytes();
            anybody.command("lane-1");
            for (String kind : List.of("score", "health", "stored")) {
                anybody.sayForGood(anybody.topic("lane-1", kind), bomb);
                anybody.sayForGood("cupbeam/other/lane-1/" + kind, bomb);
            }
            host(broker.uri());
            lane("home", broker.uri());
            programs.until("putts are stored", () -> putts() > 0);
            programs.until("the lane says why", () -> programs.said("lane-1").contains("a retained command is not obeyed"));

            String journal = text("SELECT j.name FROM journal j JOIN lane l ON l.id = j.lane_id WHERE l.name = 'lane-1'");
            String first = text("SELECT envelope FROM event WHERE sequence = 1");
            anybody.say(anybody.topic("lane-1", "event"), anybody.event("lane-1", journal, 1, Forger.NAME));
            anybody.say(anybody.topic("lane-1", "event"), anybody.event("lane-1", journal, 9_999_999_999_999_999L, Forger.NAME));
            anybody.stored("lane-1", journal, 1_000_000_000);
            for (int i = 0; i < 200; i++) {
                anybody.say(anybody.topic("lane-1", "event"), anybody.event("lane-1", "made-up-" + i, 2, Forger.NAME));
            }
            anybody.nonsense("lane-2");
            anybody.flood("lane-2", FLOOD);
            programs.until("each is told of", () -> reasons().contains("no lane is so far ahead")
                    && reasons().contains("says something else") && reasons().contains("journals of one lane are known")
                    && programs.said("lane-1").contains("there is nothing after"));

            goesOn("home");
            assertThat(text("SELECT envelope FROM event WHERE sequence = 1 AND journal_id = (SELECT id FROM journal WHERE name = '"
                    + journal + "')")).isEqualTo(first);
            assertThat(number("SELECT count(*) FROM player WHERE name = '" + Forger.NAME + "'")).as("obeyed, or believed").isZero();
            isBounded();
        }
    }

    /** More putts of the true lane come into the store, and its board shows what it says. */
    private void goesOn(String studio) throws Exception {
        long before = putts();
        programs.until("play goes on", () -> putts() > before + 2);
        try (EventStreamReader board = new EventStreamReader(port(), "/live/" + studio + "/lane-1")) {
            String score = board.await("score").data();
            assertThat(score).contains("\"lane-1\"").doesNotContain(Forger.NAME);
            assertThat(board.await("score").data()).as("a newer one").isNotEqualTo(score);
        }
    }

    private void isBounded() throws Exception {
        assertThat(programs.runs("host")).isTrue();
        assertThat(programs.said("host") + programs.said("lane-1")).doesNotContain("OutOfMemoryError");
        assertThat(Files.size(programs.log("host"))).as("bytes of log").isLessThan(100_000);
        assertThat(number("SELECT count(*) FROM dead_letter")).isBetween(5L, 600L);
    }

    private void staffComes() throws Exception {
        Visit visit = new Visit(port());
        assertThat(visit.send("POST", "/api/session", Map.of("pin", "739206")).statusCode()).isEqualTo(403);
        visit.signIn(PIN, "Kim");
        assertThat(visit.get("/api/players").statusCode()).isEqualTo(200);
    }

    /** No line that a program wrote, and no argument of any process, has one in it. */
    private void noSecretIsTold() throws IOException {
        Assumptions.assumeTrue(Files.isDirectory(Path.of("/proc/self")), "there is no /proc on this machine");
        String logs = programs.said("host") + programs.said("lane-1") + programs.said("mosquitto");
        String arguments = arguments();
        assertThat(logs).contains("Studio at", "connected to the broker");
        assertThat(arguments).contains("--store-password-file", storeUrl);
        SECRETS.forEach((whose, secret) -> {
            Pattern alone = Pattern.compile("(?<![A-Za-z0-9.-])" + Pattern.quote(secret) + "(?![A-Za-z0-9])");
            assertThat(alone.matcher(logs).find()).as(whose + " in a log").isFalse();
            assertThat(alone.matcher(arguments).find()).as(whose + " in a process's arguments").isFalse();
        });
    }

    /** As {@code ps} shows them. */
    private static String arguments() throws IOException {
        try (Stream<Path> processes = Files.list(Path.of("/proc"))) {
            return processes.filter(each -> each.getFileName().toString().matches("\\d+")).map(each -> {
                try {
                    return Files.readString(each.resolve("cmdline")).replace('\0', ' ');
                } catch (IOException gone) {
                    return "";
                }
            }).collect(Collectors.joining("\n"));
        }
    }

    /** As docs/mosquitto has it, but for TLS, which GuardedStudioIT is about. */
    private String guardedBroker() throws Exception {
        int port = freePort();
        Path passwords = folder.resolve("passwords");
        String passwd = Tools.path("mosquitto_passwd").toString();
        for (String name : List.of("host", "lane-1", "lane-2")) {
            Files.write(passwords, List.of(name + ":" + SECRETS.get(name + "'s password")),
                    java.nio.file.StandardOpenOption.CREATE, java.nio.file.StandardOpenOption.APPEND);
        }
        Programs.run(passwd, "-U", passwords.toString());
        Files.copy(DOCS.resolve("acl"), folder.resolve("acl"));
        Files.writeString(folder.resolve("mosquitto.conf"), Files.readString(DOCS.resolve("mosquitto.conf"))
                .replace("listener 8883", "listener " + port + " 127.0.0.1\nuser root")
                .replaceAll("(?m)^(certfile|keyfile|tls_version).*$", "")
                .replace("/etc/mosquitto", folder.toString()).replace("/var/lib/mosquitto", folder.toString()));
        programs.start("mosquitto", Tools.path("mosquitto").toString(), "-c", folder.resolve("mosquitto.conf").toString());
        programs.until("mosquitto runs", () -> programs.said("mosquitto").contains(" running"));
        return "tcp://127.0.0.1:" + port;
    }

    private void host(String broker, String... more) throws Exception {
        programs.java("host", HEAP_MB, "org.cupbeam.studio.Studio", Stream.concat(Stream.of("--port", "0", "--data",
                folder.resolve("data").toString(), "--broker", broker), Stream.of(more)).toArray(String[]::new));
        programs.until("the host has begun", () -> programs.said("host").contains("Studio at"));
    }

    private void lane(String studio, String broker, String... more) throws Exception {
        Path rig = Files.writeString(folder.resolve("rig.toml"), RIG);
        programs.java("lane-1", HEAP_MB, "org.cupbeam.cli.Cupbeam", Stream.concat(Stream.of("lane", "--rig", rig.toString(), "--practice",
                "--speed", "20", "--seed", "7", "--studio", studio, "--lane", "lane-1", "--data", folder.resolve("lanes").toString(),
                "--broker", broker), Stream.of(more)).toArray(String[]::new));
    }

    private int port() throws IOException {
        Matcher at = Pattern.compile("Studio at http://localhost:(\\d+)").matcher(programs.said("host"));
        assertThat(at.find()).isTrue();
        return Integer.parseInt(at.group(1));
    }

    private long putts() {
        return number("SELECT count(*) FROM attempt a JOIN lane l ON l.id = a.lane_id WHERE l.name = 'lane-1'");
    }

    private String reasons() {
        return text("SELECT reason FROM dead_letter");
    }

    private long number(String sql) {
        String text = text(sql);
        return text.isEmpty() ? 0 : Long.parseLong(text);
    }

    /** All of the first column. */
    private String text(String sql) {
        Properties as = new Properties();
        if (storePassword != null) {
            as.setProperty("password", storePassword);
        }
        StringBuilder all = new StringBuilder();
        try (var store = DriverManager.getConnection(storeUrl, as); var statement = store.createStatement();
             var row = statement.executeQuery(sql)) {
            while (row.next()) {
                all.append(all.length() == 0 ? "" : "\n").append(row.getString(1));
            }
        } catch (SQLException notYet) {
            return "";
        }
        return all.toString();
    }

    private static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return free.getLocalPort();
        }
    }
}
