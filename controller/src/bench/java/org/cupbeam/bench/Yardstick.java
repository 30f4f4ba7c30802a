package org.cupbeam.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The plain Python script that a hobbyist would write for the same job, to set the lane against. */
final class Yardstick {
    private static final Path SCRIPT = Path.of("src/bench/python/yardstick.py");
    /** Debian's, which has Debian's paho-mqtt. */
    private static final String PYTHON = System.getenv().getOrDefault("PYTHON", "/usr/bin/python3");

    private Yardstick() {
    }

    /** Whether it can run; says so where it cannot. */
    static boolean isThere(Report report) {
        try {
            if (new ProcessBuilder(PYTHON, "-c", "import paho.mqtt.client").start().waitFor() == 0) {
                return true;
            }
        } catch (IOException | InterruptedException none) {
            // as good as not there
        }
        report.line("plain Python script: not measured, %s has no paho-mqtt (apt-get install python3-paho-mqtt)", PYTHON);
        return false;
    }

    /** Replays a trace, and tells what the script says of it. */
    static String replay(Path trace) throws IOException {
        Process process = start("replay", trace.toString());
        return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    }

    static Process start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(PYTHON, SCRIPT.toString()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    }
}
