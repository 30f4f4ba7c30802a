package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;

/** Programs that a test runs, each a process with a log of its own in a folder. */
final class Programs implements AutoCloseable {
    private static final int PATIENCE_S = 60;
    private final Path folder;
    private final Map<String, Process> running = new LinkedHashMap<>();

    Programs(Path folder) {
        this.folder = folder;
    }

    void start(String name, String... command) throws IOException {
        running.put(name, new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log(name).toFile()).start());
    }

    /** One of ours, in so much heap. */
    void java(String name, int heapMb, String main, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xmx" + heapMb + "m", "-Dorg.slf4j.simpleLogger.log.org.cupbeam=info",
                "-cp", System.getProperty("java.class.path"), main));
        command.addAll(List.of(arguments));
        start(name, command.toArray(String[]::new));
    }

    boolean runs(String name) {
        return running.get(name).isAlive();
    }

    Path log(String name) {
        return folder.resolve(name + ".log");
    }

    String said(String name) throws IOException {
        return Files.readString(log(name));
    }

    /** A file with a line that only its owner may read. */
    String secret(String name, String line) throws IOException {
        Path file = Files.writeString(folder.resolve(name + ".secret"), line + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        return file.toString();
    }

    /** Waits for what holds in the end, or fails with what all of them have said. */
    void until(String what, Callable<Boolean> holds) throws Exception {
        long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        while (!holds.call()) {
            if (System.nanoTime() > endNs) {
                StringBuilder all = new StringBuilder("not in time: " + what);
                for (String each : running.keySet()) {
                    String said = said(each);
                    all.append("\n\n").append(each).append(":\n").append(said.substring(Math.max(0, said.length() - 4_000)));
                }
                throw new AssertionError(all);
            }
            TimeUnit.MILLISECONDS.sleep(50);
        }
    }

    static void run(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        assertThat(process.waitFor(30, TimeUnit.SECONDS) && process.exitValue() == 0).as(command[0]).isTrue();
    }

    @Override
    public void close() throws Exception {
        for (Process each : running.values()) {
            each.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        }
    }
}
