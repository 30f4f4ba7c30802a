package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The alarms of docs/prometheus, held by Prometheus' own promtool: what they are written in, and when each is raised. */
class AlarmsTest {
    @TempDir
    private Path folder;

    @Test
    void areReadByPrometheusAndRaisedWhenTheyShould() throws Exception {
        Files.copy(Path.of("..", "docs", "prometheus", "cupbeam-rules.yml"), folder.resolve("cupbeam-rules.yml"));
        Files.copy(Path.of("src", "test", "resources", "cupbeam-rules-test.yml"), folder.resolve("cupbeam-rules-test.yml"));

        promtool("check", "rules", "cupbeam-rules.yml");
        promtool("test", "rules", "cupbeam-rules-test.yml");
    }

    /** Not among the programs that a build must have: it comes with all of Prometheus. */
    private void promtool(String... arguments) throws Exception {
        Path program = Stream.of("/usr/bin/promtool", "/usr/local/bin/promtool").map(Path::of).filter(Files::isExecutable).findFirst()
                .orElseGet(() -> Assumptions.abort("promtool is not on this machine"));
        List<String> command = new ArrayList<>(List.of(program.toString()));
        command.addAll(List.of(arguments));
        Path said = folder.resolve("said");
        Process process = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true).redirectOutput(said.toFile()).start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(Files.readString(said)).isZero();
    }
}
