package org.cupbeam.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The plain Python script that a hobbyist would write for the same job, to set the lane against. */
final class Yardstick {
    private static final Path SCRIPT = Path.of("src/bench/python/yardstick.py");

    private Yardstick() {
    }

    /** Replays a trace, and tells what the script says of it. */
    static String replay(Path trace) throws IOException {
        Process process = start("replay", trace.toString());
        return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    }

    /** Starts it with Debian's Python, which has Debian's paho-mqtt, or the one that {@code -Dpython} names. */
    static Process start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(System.getProperty("python", "/usr/bin/python3"), SCRIPT.toString()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    }
}
