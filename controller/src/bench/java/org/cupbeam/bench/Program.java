package org.cupbeam.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A Java program in a process of its own, with the Java that runs the benchmarks. */
final class Program implements AutoCloseable {
    static final Path CONTROLLER = Path.of("target", "cupbeam-controller.jar");
    static final Path STUDIO = Path.of("..", "dashboard", "target", "cupbeam-studio.jar");
    private static final int STOPS_WITHIN_S = 20;

    private final Process process;
    private final BufferedReader says;

    private Program(Process process) {
        this.process = process;
        says = process.inputReader();
    }

    static Program start(List<String> flags, List<String> program) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(flags);
        command.addAll(program);
        return new Program(new ProcessBuilder(command).redirectErrorStream(true).start());
    }

    /** A lane on a simulated green, with a journal of this name in the folder. */
    static List<String> lane(Path folder, String name, Broker broker) throws IOException {
        Path rig = folder.resolve("rig.toml");
        if (!Files.exists(rig)) {
            try (Stream<String> lines = Stream.of("[green]", "stimp_ft = 10.0", "uphill_percent = 0.0", "[overshoot]",
                    "limit_mm = 914.4", "[cup]", "gpio = 17", beam("before-1", 22, -300), beam("before-2", 23, -240),
                    beam("past-1", 5, 914.4), beam("past-2", 6, 974.4))) {
                Files.write(rig, (Iterable<String>) lines::iterator);
            }
        }
        return List.of("-jar", CONTROLLER.toString(), "lane", "--practice", "--rig", rig.toString(), "--data",
                folder.toString(), "--lane", name, "--broker", broker.uri());
    }

    private static String beam(String name, int gpio, double positionMm) {
        return "[[beam]]\nname = \"" + name + "\"\ngpio = " + gpio + "\nposition_mm = " + positionMm
                + "\nheight_mm = 21.0";
    }

    /** Waits until it says so. */
    void awaitWord(String word) throws IOException {
        StringBuilder said = new StringBuilder();
        for (String line; (line = says.readLine()) != null;) {
            if (line.contains(word)) {
                return;
            }
            said.append(line).append('\n');
        }
        throw new IOException("it ended without saying \"" + word + "\", but\n" + said);
    }

    /** Resident memory now, MB: of it in files, which others that map them share. */
    double residentMb(String field) throws IOException {
        for (String line : Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status"))) {
            if (line.startsWith(field + ":")) {
                return Long.parseLong(line.replaceAll("\\D", "")) / 1024.0;
            }
        }
        throw new IOException("the system does not say " + field);
    }

    @Override
    public void close() {
        process.toHandle().destroy(); // the process's own would close what it still has to say
        try {
            says.transferTo(Writer.nullWriter());
            if (!process.waitFor(STOPS_WITHIN_S, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (IOException | InterruptedException e) {
            process.destroyForcibly();
        }
    }
}
