package org.cupbeam.board;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.Outside;

/** Mosquitto, in a process of its own on a free port of the loopback. */
final class Broker implements AutoCloseable {
    private static final int TRIES = 200;

    private final Process process;
    private final int port;

    Broker(Path folder) throws IOException, InterruptedException {
        try (ServerSocket probe = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = probe.getLocalPort();
        }
        Path settings = Files.write(folder.resolve("mosquitto.conf"), List.of("listener " + port + " 127.0.0.1",
                "allow_anonymous true", "persistence false", "set_tcp_nodelay true"));
        process = new ProcessBuilder(Outside.program("mosquitto"), "-c", settings.toString()).redirectErrorStream(true)
                .redirectOutput(folder.resolve("mosquitto.log").toFile()).start();
        for (int i = 0; !listens(); i++) {
            if (i == TRIES) {
                close();
                throw new IOException("mosquitto does not listen; see its log in " + folder);
            }
            TimeUnit.MILLISECONDS.sleep(20);
        }
    }

    private boolean listens() {
        try (Socket knock = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return true;
        } catch (IOException notYet) {
            return false;
        }
    }

    int port() {
        return port;
    }

    @Override
    public void close() {
        process.destroy();
    }
}
