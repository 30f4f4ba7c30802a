package org.cupbeam.link;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Mosquitto, as installed on this machine, in a process of its own. */
final class Mosquitto implements Broker {
    private final Path folder;
    private final int port;
    private final List<String> settings;
    private Process process;

    /** @param settings lines of its configuration, beside where it listens */
    Mosquitto(Path folder, List<String> settings) throws IOException {
        this.folder = folder;
        this.port = StubBroker.freePort();
        this.settings = settings;
    }

    static Mosquitto open(Path folder) throws IOException {
        return new Mosquitto(folder, List.of("allow_anonymous true"));
    }

    /** Where a program of this name is; skips the test where it is not, or fails it where everything is required. */
    static Path program(String name) {
        Path found = Stream.of("/usr/sbin", "/usr/bin", "/usr/local/sbin", "/usr/local/bin", "/opt/homebrew/sbin")
                .map(each -> Path.of(each, name)).filter(Files::isExecutable).findFirst().orElse(null);
        if (found == null && "1".equals(System.getenv("CUPBEAM_REQUIRE_TOOLS"))) {
            throw new AssertionError(name + " is not installed; apt-get install mosquitto");
        }
        Assumptions.assumeTrue(found != null, name + " is not installed (apt-get install mosquitto)");
        return found;
    }

    int port() {
        return port;
    }

    @Override
    public String uri() {
        return "tcp://127.0.0.1:" + port;
    }

    @Override
    public void start() throws Exception {
        List<String> lines = new ArrayList<>(List.of("listener " + port + " 127.0.0.1", "persistence false",
                "user root", "log_dest file " + folder.resolve("mosquitto.log")));
        lines.addAll(settings);
        Path file = Files.write(folder.resolve("mosquitto.conf"), lines);
        process = new ProcessBuilder(program("mosquitto").toString(), "-c", file.toString())
                .redirectErrorStream(true).redirectOutput(folder.resolve("mosquitto.out").toFile()).start();
        Patience.until("mosquitto listens, see " + folder, () -> {
            if (!process.isAlive()) {
                throw new AssertionError("mosquitto ended: " + Files.readString(folder.resolve("mosquitto.out")));
            }
            try (Socket knock = new Socket(InetAddress.getLoopbackAddress(), port)) {
                return true;
            } catch (IOException e) {
                return false;
            }
        });
    }

    @Override
    public void kill() throws Exception {
        if (process != null) {
            process.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        }
    }
}
