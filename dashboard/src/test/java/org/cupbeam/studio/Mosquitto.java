package org.cupbeam.studio;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A real Mosquitto of a test's own, keeping nothing on disk. */
public final class Mosquitto implements AutoCloseable {
    private final Process process;
    private final Path config;
    private final int port;

    /** @param wantedPort 0 for any that is free */
    public Mosquitto(int wantedPort) throws IOException {
        this(wantedPort, "");
    }

    /** @param more lines of its settings */
    public Mosquitto(int wantedPort, String more) throws IOException {
        Path program = Tools.path("mosquitto");
        port = wantedPort == 0 ? freePort() : wantedPort;
        config = Files.createTempFile("cupbeam-mosquitto", ".conf");
        Files.writeString(config, "listener " + port + " 127.0.0.1\nallow_anonymous true\npersistence false\n"
                + "max_queued_messages 100000\n" + more);
        process = new ProcessBuilder(program.toString(), "-c", config.toString())
                .redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        awaitOpen();
    }

    public String uri() {
        return "tcp://127.0.0.1:" + port;
    }

    public ProcessHandle handle() {
        return process.toHandle();
    }

    /** By signal 9; what it held in memory is gone. */
    public void kill() throws InterruptedException {
        process.destroyForcibly().waitFor(5, TimeUnit.SECONDS);
    }

    @Override
    public void close() throws IOException {
        process.destroy();
        try {
            process.waitFor(5, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        process.destroyForcibly();
        Files.deleteIfExists(config);
    }

    private static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return free.getLocalPort();
        }
    }

    private void awaitOpen() throws IOException {
        for (int tries = 0; tries < 100; tries++) {
            try (Socket socket = new Socket()) {
                socket.connect(new InetSocketAddress("127.0.0.1", port), 200);
                return;
            } catch (IOException e) {
                pause();
            }
        }
        process.destroyForcibly();
        throw new IOException("mosquitto did not open port " + port);
    }

    private static void pause() {
        try {
            TimeUnit.MILLISECONDS.sleep(50);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
