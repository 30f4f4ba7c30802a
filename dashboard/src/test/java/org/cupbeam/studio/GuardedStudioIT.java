package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import org.cupbeam.link.Trust;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A lane and a host, each a process, at a Mosquitto that is set up from the files of docs/mosquitto, and a thief. */
@Timeout(180)
class GuardedStudioIT {
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

    /** What somebody with lane-2's password would like to say. */
    private static final List<String> FORGED = List.of("cupbeam/mill/lane-1/event", "cupbeam/mill/lane-1/score",
            "cupbeam/mill/lane-1/health", "cupbeam/mill/lane-1/answer", "cupbeam/mill/lane-1/command",
            "cupbeam/mill/lane-1/stored", "cupbeam/mill/lane-2/command", "cupbeam/mill/lane-2/stored",
            "cupbeam/other/lane-2/event", "cupbeam/mill/lane-3/event", "cupbeam/mill/host/event", "$SYS/broker/version");

    @TempDir
    private Path folder;
    private final int port = freePort();
    private final List<Process> running = new ArrayList<>();

    @BeforeEach
    void startBroker() throws Exception {
        Path broker = Tools.path("mosquitto");
        run("sh", DOCS.resolve("certificates.sh").toAbsolutePath().toString(), folder.toString(), "localhost");
        String passwd = Tools.path("mosquitto_passwd").toString();
        run(passwd, "-b", "-c", folder.resolve("passwords").toString(), "host", "host's");
        for (String lane : List.of("lane-1", "lane-2")) {
            run(passwd, "-b", folder.resolve("passwords").toString(), lane, lane + "'s");
        }
        Files.copy(DOCS.resolve("acl"), folder.resolve("acl"));
        Files.writeString(folder.resolve("mosquitto.conf"), Files.readString(DOCS.resolve("mosquitto.conf"))
                .replace("listener 8883", "listener " + port + " 127.0.0.1\nuser root")
                .replace("/etc/mosquitto", folder.toString()).replace("/var/lib/mosquitto", folder.toString()));
        start("mosquitto", broker.toString(), "-c", folder.resolve("mosquitto.conf").toString());
        until(() -> "mosquitto runs: " + said("mosquitto"), () -> said("mosquitto").contains(" running"));
    }

    @AfterEach
    void stop() throws Exception {
        for (Process each : running) {
            each.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        }
    }

    @Test
    void aLaneAndAHostWorkAndWhatALanesNameForgesGetsNowhere() throws Exception {
        program("host", "org.cupbeam.studio.Studio", "--port", "0", "--data", folder.resolve("data").toString(),
                "--broker", uri(), "--username", "host", "--password-file", secret("host"), "--ca-file", ca());
        until(() -> "the host has begun: " + said("host"), () -> said("host").contains("Studio at"));
        lane("lane-1", "lane-1");
        until(() -> "putts are stored; the lane: " + said("lane-1") + "; the host: " + said("host"),
                () -> asked("SELECT count(*) FROM attempt") > 0);
        until(() -> "the lane is told so", () -> asked("SELECT max(stored) FROM journal") > 0);

        try (Named thief = new Named("cupbeam-host", "lane-2")) {
            for (String topic : FORGED) {
                thief.say(topic, "forged");
            }
            thief.say("cupbeam/mill/lane-2/event", "nonsense, on a topic of its own");
            until(() -> "the host hears the one", () -> asked("SELECT count(*) FROM dead_letter") > 0);
            TimeUnit.MILLISECONDS.sleep(500);
        }
        assertThat(asked("SELECT count(*) FROM dead_letter")).as("and no other").isEqualTo(1);
        long before = asked("SELECT count(*) FROM attempt");
        until(() -> "play goes on", () -> asked("SELECT count(*) FROM attempt") > before);
    }

    @Test
    void everyNameHearsAndSaysWhatIsItsOwnAlone() throws Exception {
        try (Named host = new Named("1", "host"); Named thief = new Named("2", "lane-2"); Named victim = new Named("3", "lane-1")) {
            host.hear("#");
            thief.hear("#");
            victim.hear("#");
            for (String topic : FORGED) {
                thief.say(topic, "forged");
            }
            host.say("cupbeam/mill/lane-1/event", "forged");
            host.say("cupbeam/other/lane-1/command", "forged");
            thief.say("cupbeam/mill/lane-2/event", "own");
            host.say("cupbeam/mill/lane-2/command", "asked");
            until(() -> "each hears its own: " + host.heard + thief.heard,
                    () -> host.heard.contains("cupbeam/mill/lane-2/event own")
                            && thief.heard.contains("cupbeam/mill/lane-2/command asked"));
            TimeUnit.MILLISECONDS.sleep(500);
            assertThat(host.heard).containsExactly("cupbeam/mill/lane-2/event own");
            assertThat(thief.heard).containsExactly("cupbeam/mill/lane-2/command asked");
            assertThat(victim.heard).isEmpty();
        }
    }

    @Test
    void aNameThatIsNotTheLanesOwnIsHeardByNobody() throws Exception {
        lane("lane-2", "lane-1");
        try (Named host = new Named("ear", "host")) {
            host.hear("cupbeam/mill/+/+");
            until(() -> "the lane is let in: " + said("lane-1"), () -> said("lane-1").contains("connected to the broker"));
            TimeUnit.SECONDS.sleep(2);
            assertThat(host.heard).isEmpty();
        }
    }

    @Test
    void aBrokerUnderAnotherNameThanItsCertificatesIsNotSpokenTo() throws Exception {
        program("host", "org.cupbeam.studio.Studio", "--port", "0", "--data", folder.resolve("data").toString(), "--broker",
                uri().replace("localhost", "127.0.0.1"), "--username", "host", "--password-file", secret("host"), "--ca-file", ca());
        program("lane-1", "org.cupbeam.cli.Cupbeam", laneArguments("lane-1", "lane-1", uri().replace("localhost", "127.0.0.1")));
        until(() -> "both say why: " + said("host") + said("lane-1"), () -> said("host").contains("subject alternative")
                && said("lane-1").contains("subject alternative"));
    }

    @Test
    void aPasswordThatOthersMayReadIsRefusedByLaneAndHost() throws Exception {
        Path open = Path.of(secret("lane-1"));
        Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rw-r--r--"));
        lane("lane-1", "lane-1");
        program("host", "org.cupbeam.studio.Studio", "--port", "0", "--data", folder.resolve("data").toString(),
                "--broker", uri(), "--username", "host", "--password-file", open.toString(), "--ca-file", ca());
        for (Process each : running.subList(1, 3)) {
            assertThat(each.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(each.exitValue()).isEqualTo(2);
        }
        assertThat(said("lane-1")).contains("chmod 600 " + open);
        assertThat(said("host")).contains("chmod 600 " + open);
    }

    private void lane(String user, String lane) throws Exception {
        program(lane, "org.cupbeam.cli.Cupbeam", laneArguments(user, lane, uri()));
    }

    private String[] laneArguments(String user, String lane, String broker) throws IOException {
        Path rig = Files.writeString(folder.resolve("rig.toml"), RIG);
        return new String[] {"lane", "--rig", rig.toString(), "--practice", "--speed", "20", "--seed", "7", "--studio", "mill",
            "--lane", lane, "--data", folder.resolve("lanes").toString(), "--broker", broker, "--username", user,
            "--password-file", Files.exists(folder.resolve(user + ".secret")) ? folder.resolve(user + ".secret").toString()
                : secret(user), "--ca-file", ca()};
    }

    /** Somebody who has a name and its password, and a client of their own. */
    private final class Named implements AutoCloseable {
        private final List<String> heard = new CopyOnWriteArrayList<>();
        private final MqttClient client;

        Named(String id, String name) throws Exception {
            client = new MqttClient(uri(), id, new MemoryPersistence());
            MqttConnectOptions options = new MqttConnectOptions();
            options.setUserName(name);
            options.setPassword((name + "'s").toCharArray());
            options.setSocketFactory(Trust.only(Path.of(ca())));
            client.setTimeToWait(10_000);
            client.connect(options);
        }

        void hear(String filter) throws Exception {
            client.subscribe(filter, 1, (topic, message) -> heard.add(topic + " " + new String(message.getPayload(),
                    StandardCharsets.UTF_8)));
        }

        void say(String topic, String words) throws Exception {
            client.publish(topic, words.getBytes(StandardCharsets.UTF_8), 1, false);
        }

        @Override
        public void close() throws Exception {
            try {
                client.disconnectForcibly(0, 200);
            } finally {
                client.close(true);
            }
        }
    }

    private String uri() {
        return "ssl://localhost:" + port;
    }

    private String ca() {
        return folder.resolve("ca.pem").toString();
    }

    private String secret(String name) throws IOException {
        Path file = Files.writeString(folder.resolve(name + ".secret"), name + "'s\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        return file.toString();
    }

    private long asked(String sql) {
        try (var store = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("data").resolve("studio.db"));
             var statement = store.createStatement(); var row = statement.executeQuery(sql)) {
            return row.next() ? row.getLong(1) : 0;
        } catch (SQLException notYet) {
            return 0;
        }
    }

    private void program(String name, String main, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC", "-Xmx96m", "-Dorg.slf4j.simpleLogger.log.org.cupbeam=info", "-cp", System.getProperty("java.class.path"), main));
        command.addAll(List.of(arguments));
        start(name, command.toArray(String[]::new));
    }

    private void start(String name, String... command) throws IOException {
        running.add(new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(folder.resolve(name + ".log").toFile()).start());
    }

    private String said(String name) throws IOException {
        return Files.readString(folder.resolve(name + ".log"));
    }

    private static void until(Callable<String> what, Callable<Boolean> holds) throws Exception {
        long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(40);
        while (!holds.call()) {
            if (System.nanoTime() > endNs) {
                throw new AssertionError("not in time: " + what.call());
            }
            TimeUnit.MILLISECONDS.sleep(50);
        }
    }

    private static void run(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        assertThat(process.waitFor(30, TimeUnit.SECONDS) && process.exitValue() == 0).as(command[0]).isTrue();
    }

    private static int freePort() {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return free.getLocalPort();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
