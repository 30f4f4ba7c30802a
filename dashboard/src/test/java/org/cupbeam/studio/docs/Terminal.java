package org.cupbeam.studio.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;

/**
 * A terminal in a folder of its own, on whose lines somebody types a document's commands. What runs until interrupted goes on
 * until another of its kind is begun. Ports are free ones, and where a board would have pins there is a simulated green.
 */
final class Terminal implements AutoCloseable {
    private static final Pattern STAYS = Pattern.compile(".*controller\\.jar (record|lane) .*|.*(studio)\\.jar(?! (?:pin|store) ).*");
    private static final Path LANE = Doc.ROOT.resolve("controller/target/cupbeam-controller.jar").toAbsolutePath().normalize();
    private static final Path STUDIO = Path.of("target/cupbeam-studio.jar").toAbsolutePath();
    private static final int TRACE_ENOUGH_BYTES = 10_000;
    private static final int PATIENCE_S = 90;

    private final Path folder;
    private final int pagesPort = freePort();
    private final int brokerPort = freePort();
    private final Map<String, Process> running = new LinkedHashMap<>();

    Terminal(Path folder) throws IOException {
        this.folder = folder;
        Files.copy(Doc.ROOT.resolve("hardware-notes/rigs/standard.toml"), folder.resolve("rig.toml"));
        Files.copy(Doc.ROOT.resolve("controller/src/main/resources/org/cupbeam/drill/ladder.toml"), folder.resolve("drill.toml"));
        Files.createDirectory(folder.resolve("cupbeam-data"));
        assertThat(LANE).as("the packaged jar; run mvn verify, not a single test").exists();
        assertThat(STUDIO).as("the packaged jar; run mvn verify, not a single test").exists();
        Files.writeString(folder.resolve("cupbeam"), Sources.read(Path.of("src/deb/files/usr/bin/cupbeam"))
                .replace("/usr/share/cupbeam/cupbeam-studio.jar", STUDIO.toString()));
    }

    /** @return what it said, on both streams */
    String type(String words) throws Exception {
        var stays = STAYS.matcher(words);
        if (!stays.matches()) {
            return run(here(words));
        }
        String kind = stays.group(1) == null ? stays.group(2) : stays.group(1);
        end(running.remove(kind));
        Path said = Files.createTempFile(folder, kind, ".said");
        Process process = shell("exec " + here(options(kind, words)), said);
        running.put(kind, process);
        String mark = switch (kind) {
            case "record" -> "recording to";
            case "lane" -> " is ready";
            default -> "Studio at";
        };
        until(words, said, process, () -> Files.readString(said).contains(mark));
        if (kind.equals("record")) {
            Path trace = folder.resolve(words.substring(words.lastIndexOf(' ') + 1));
            until(words, said, process, () -> Files.size(trace) > TRACE_ENOUGH_BYTES);
            end(running.remove(kind));
        }
        return Files.readString(said);
    }

    /** What a real board does not need. */
    private String options(String kind, String words) {
        if (kind.equals("studio")) {
            return words.replaceAll("--lane \\S+=\\S+", "--practice") + " --port " + pagesPort
                    + (words.contains("--broker") ? "" : " --mqtt-port " + brokerPort);
        }
        String green = words.contains("--practice") || words.contains("--trace") ? "" : " --practice --speed 100 --seed 7";
        String more = green + (kind.equals("lane") ? " --broker tcp://127.0.0.1:" + brokerPort : "");
        return words.replaceAll("--broker \\S+", "").replaceFirst("controller\\.jar (record|lane)", "controller.jar $1" + more);
    }

    private String here(String words) {
        return words.replaceAll("-jar (?:\\S*/)?cupbeam-controller\\.jar", "-jar " + LANE)
                .replaceAll("-jar (?:\\S*/)?cupbeam-studio\\.jar", "-jar " + STUDIO)
                .replaceFirst("(^|\\| )java ", "$1" + Path.of(System.getProperty("java.home"), "bin", "java") + " ")
                .replaceFirst("^(?:sudo -u cupbeam )?cupbeam ", "sh " + folder.resolve("cupbeam") + " ")
                .replace("/var/lib/cupbeam", folder.resolve("cupbeam-data").toString())
                .replace("localhost:8080", "localhost:" + pagesPort)
                .replace("127.0.0.1:1883", "127.0.0.1:" + brokerPort)
                .replaceFirst("^mosquitto_sub ", "mosquitto_sub -W 60 -p " + brokerPort + " ");
    }

    private String run(String words) throws Exception {
        Path said = Files.createTempFile(folder, "run", ".said");
        Process process = shell(words, said);
        try (var in = process.outputWriter()) {
            in.write("739205\n"); // where a PIN is asked for
        } catch (IOException notAsked) {
            // it has ended already
        }
        assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).as("ends: %s", words).isTrue();
        assertThat(process.exitValue()).as("%s: %s", words, Files.readString(said)).isZero();
        return Files.readString(said);
    }

    private Process shell(String words, Path said) throws IOException {
        return new ProcessBuilder("sh", "-c", words).directory(folder.toFile()).redirectErrorStream(true)
                .redirectOutput(said.toFile()).start();
    }

    private static void until(String what, Path said, Process process, Callable<Boolean> holds) throws Exception {
        long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        while (!holds.call()) {
            assertThat(process.isAlive() && System.nanoTime() < endNs).as("%s: %s", what, Files.readString(said)).isTrue();
            TimeUnit.MILLISECONDS.sleep(50);
        }
    }

    private static void end(Process process) throws InterruptedException {
        if (process != null) {
            assertThat(process.isAlive()).as("it runs until it is interrupted").isTrue();
            process.destroy();
            assertThat(process.waitFor(30, TimeUnit.SECONDS)).as("it ends when it is asked to").isTrue();
        }
    }

    private static int freePort() {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return free.getLocalPort();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() throws InterruptedException {
        for (Process process : running.values()) {
            process.destroy();
            if (!process.waitFor(15, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        }
    }
}
