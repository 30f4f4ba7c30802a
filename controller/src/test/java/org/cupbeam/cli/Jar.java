package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The controller's jar, run as a user runs it. */
final class Jar {
    private static final Path JAR = Path.of("target", "cupbeam-controller.jar");

    /** What a command came to. */
    record Outcome(int status, List<String> out, String err) {
    }

    private Jar() {
    }

    static List<String> command(String... arguments) {
        assertThat(JAR).as("the packaged jar; run mvn verify, not a single test").exists();
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", JAR.toString()));
        command.addAll(List.of(arguments));
        return command;
    }

    static Outcome run(Path folder, String... arguments) throws IOException, InterruptedException {
        return answered(folder, Files.createTempFile(folder, "in", ""), arguments);
    }

    /** The same, with a file typed to it. */
    static Outcome answered(Path folder, Path typed, String... arguments) throws IOException, InterruptedException {
        Path out = Files.createTempFile(folder, "out", "");
        Path err = Files.createTempFile(folder, "err", "");
        Process process = new ProcessBuilder(command(arguments)).redirectInput(typed.toFile())
                .redirectOutput(out.toFile()).redirectError(err.toFile()).start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).as("ends").isTrue();
        return new Outcome(process.exitValue(), Files.readAllLines(out), Files.readString(err));
    }
}
