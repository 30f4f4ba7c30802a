package org.cupbeam.studio.kill;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.studio.Tools;

/** A studio with one lane: the lane's program, Mosquitto and the host's, with a folder each. */
final class Fleet implements AutoCloseable {
    final Path folder;
    final int pagesPort = freePort();
    final Program broker;
    final Program host;
    private final int mqttPort = freePort();

    Fleet(Path folder) throws IOException {
        this.folder = folder;
        Path settings = folder.resolve("mosquitto.conf");
        Files.createDirectories(folder.resolve("mosquitto"));
        Files.write(settings, List.of("listener " + mqttPort + " 127.0.0.1", "allow_anonymous true", "user root",
                "persistence true", "persistence_location " + folder.resolve("mosquitto") + "/", "autosave_interval 1",
                "max_queued_messages 100000"));
        String mosquitto = Tools.path("mosquitto").toString();
        broker = new Program("mosquitto", folder, " running", () -> List.of(mosquitto, "-c", settings.toString()));
        host = new Program("host", folder, "Studio at", () -> Program.host("--broker", uri(), "--port", "" + pagesPort,
                "--data", folder.resolve("host").toString()));
    }

    /** Another host at the same broker, its store elsewhere. */
    Program host(String name, String storeUrl, int port) {
        return new Program(name, folder, "Studio at", () -> Program.host("--broker", uri(), "--port", "" + port,
                "--data", folder.resolve(name).toString(), "--store", storeUrl));
    }

    /** A lane that is to be run with these options beside those of every lane. */
    Program lane(Supplier<List<String>> options) {
        return new Program("lane", folder, " is ready", () -> {
            List<String> command = Program.lane("lane", "--studio", "north", "--lane", "bay-3", "--data",
                    folder.resolve("lane").toString(), "--broker", uri());
            command.addAll(options.get());
            return command;
        });
    }

    Path journal() {
        return folder.resolve("lane").resolve("north.bay-3.db");
    }

    Path store() {
        return folder.resolve("host").resolve("studio.db");
    }

    /** The first value of what is asked of the store, beside the host, which goes on writing; empty while there is none. */
    String ask(String sql) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + store());
                Statement statement = connection.createStatement(); ResultSet found = statement.executeQuery(sql)) {
            return found.next() ? found.getString(1) : "";
        } catch (SQLException notYet) {
            return "";
        }
    }

    /** Has the broker lose all that it keeps on its disk. */
    void emptyBroker() throws IOException {
        try (var files = Files.list(folder.resolve("mosquitto"))) {
            for (Path each : files.toList()) {
                Files.delete(each);
            }
        }
    }

    private String uri() {
        return "tcp://127.0.0.1:" + mqttPort;
    }

    /** The score as a board that is opened now shows it. */
    Score shown() throws Exception {
        return shown(pagesPort);
    }

    /** The same, at any host's pages. */
    static Score shown(int port) throws Exception {
        var stream = URI.create("http://127.0.0.1:" + port + "/live/north/bay-3").toURL().openConnection();
        stream.setReadTimeout(5_000);
        try (BufferedReader lines = new BufferedReader(
                new InputStreamReader(stream.getInputStream(), StandardCharsets.UTF_8))) {
            String event = "";
            for (String line; (line = lines.readLine()) != null; ) {
                if (line.startsWith("event: ")) {
                    event = line.substring(7);
                } else if (event.equals("score") && line.startsWith("data: ")) {
                    return ScoreJson.decode(line.substring(6).getBytes(StandardCharsets.UTF_8));
                }
            }
        }
        throw new AssertionError("the board shows no score");
    }

    static void until(Supplier<String> what, int withinS, Callable<Boolean> holds) throws Exception {
        long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(withinS);
        while (!holds.call()) {
            if (System.nanoTime() - endNs > 0) {
                throw new AssertionError("not within " + withinS + " s: " + what.get());
            }
            TimeUnit.MILLISECONDS.sleep(50);
        }
    }

    static int freePort() {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return free.getLocalPort();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() throws InterruptedException {
        host.close();
        broker.close();
    }
}
