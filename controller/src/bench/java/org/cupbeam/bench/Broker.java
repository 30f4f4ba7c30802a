package org.cupbeam.bench;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Mosquitto, as installed on this machine, in a process of its own on a free port of the loopback. */
final class Broker implements AutoCloseable {
    private static final int TRIES = 100;

    private final Process process;
    private final int port;

    private Broker(Process process, int port) {
        this.process = process;
        this.port = port;
    }

    /** Starts it; empty where it is not installed. */
    static Optional<Broker> start(Report report) throws IOException, InterruptedException {
        Optional<Path> program = Stream.of("/usr/sbin/mosquitto", "/usr/bin/mosquitto", "/usr/local/sbin/mosquitto",
                "/opt/homebrew/sbin/mosquitto").map(Path::of).filter(Files::isExecutable).findFirst();
        if (program.isEmpty()) {
            report.line("not measured: mosquitto is not installed (apt-get install mosquitto)");
            return Optional.empty();
        }
        int port = freePort();
        Path settings = Files.write(report.file("mosquitto.conf"), List.of("listener " + port + " 127.0.0.1",
                "allow_anonymous true", "persistence false", "set_tcp_nodelay true"));
        Process process = new ProcessBuilder(program.get().toString(), "-c", settings.toString())
                .redirectErrorStream(true).redirectOutput(report.file("mosquitto.log").toFile()).start();
        Broker broker = new Broker(process, port);
        broker.awaitReady();
        return Optional.of(broker);
    }

    private static int freePort() throws IOException {
        try (ServerSocket probe = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return probe.getLocalPort();
        }
    }

    private void awaitReady() throws IOException, InterruptedException {
        for (int i = 0; i < TRIES; i++) {
            try (Socket knock = new Socket(InetAddress.getLoopbackAddress(), port)) {
                return;
            } catch (IOException notYet) {
                TimeUnit.MILLISECONDS.sleep(20);
            }
        }
        close();
        throw new IOException("mosquitto does not listen on port " + port + "; see its log beside the report");
    }

    int port() {
        return port;
    }

    String uri() {
        return "tcp://127.0.0.1:" + port;
    }

    @Override
    public void close() {
        process.destroy();
    }
}
