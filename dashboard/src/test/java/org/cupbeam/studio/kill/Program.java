package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** A program that is started, killed, and started again; what it says is kept in a file. */
final class Program implements AutoCloseable {
    private static final Path LANE = Path.of("..", "controller", "target", "cupbeam-controller.jar");
    private static final Path HOST = Path.of("target", "cupbeam-studio.jar");

    final String name;
    private final Supplier<List<String>> command;
    private final String readyMark;
    private final Path log;
    private Process process;
    private Thread listener;
    private volatile long readyNs;

    /**
     * @param command   asked at each start
     * @param readyMark part of the line by which it says that it is ready; null where it says nothing
     */
    Program(String name, Path folder, String readyMark, Supplier<List<String>> command) {
        this.name = name;
        this.command = command;
        this.readyMark = readyMark;
        log = folder.resolve(name + ".log");
    }

    /** The lane's command line, as its jar is run. */
    static List<String> lane(String... arguments) {
        return java(LANE, arguments);
    }

    /** The host's. */
    static List<String> host(String... arguments) {
        return java(HOST, arguments);
    }

    private static List<String> java(Path jar, String... arguments) {
        assertThat(jar).as("the packaged jar; run mvn verify, not a single test").exists();
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC", "-Xmx64m", "-XX:TieredStopAtLevel=1", "-jar", jar.toString()));
        command.addAll(List.of(arguments));
        return command;
    }

    void start() throws IOException {
        readyNs = 0;
        process = new ProcessBuilder(command.get()).redirectErrorStream(true).start();
        BufferedReader out = process.inputReader();
        listener = new Thread(() -> listen(out), name + "-log");
        listener.setDaemon(true);
        listener.start();
    }

    private void listen(BufferedReader out) {
        try (Writer to = Files.newBufferedWriter(log, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
            for (String line; (line = out.readLine()) != null; ) {
                if (readyMark != null && line.contains(readyMark)) {
                    readyNs = System.nanoTime();
                }
                to.write(line + "\n");
                to.flush();
            }
        } catch (IOException ended) {
            // with the process
        }
    }

    boolean isAlive() {
        return process != null && process.isAlive();
    }

    long pid() {
        return process.pid();
    }

    /** When it said that it is ready, on this machine's monotonic clock; 0 while it has not. */
    long readyNs() {
        return readyNs;
    }

    /** By signal 9. */
    void kill() throws InterruptedException {
        assertThat(isAlive()).as(name + " runs until it is killed; it said: " + said()).isTrue();
        process.toHandle().destroyForcibly();
        assertThat(process.waitFor(10, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as("by signal 9").isEqualTo(128 + 9);
        listener.join(5_000);
    }

    /** As whoever runs it ends it. */
    int end() throws InterruptedException {
        process.toHandle().destroy();
        assertThat(process.waitFor(15, TimeUnit.SECONDS)).as(name + " ends when it is asked to").isTrue();
        listener.join(5_000);
        return process.exitValue();
    }

    /** Waits for it to end by itself. */
    int status() throws InterruptedException {
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).as(name + " ends").isTrue();
        listener.join(5_000);
        return process.exitValue();
    }

    String said() {
        try {
            return Files.exists(log) ? Files.readString(log) : "";
        } catch (IOException e) {
            return e.toString();
        }
    }

    @Override
    public void close() throws InterruptedException {
        if (process != null) {
            process.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        }
    }
}
