package org.cupbeam.log;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.cupbeam.cli.Cupbeam;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

class LogFormTest {
    private static final String LINE = "INFO Link - connected";
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();
    private final PrintStream plain = new PrintStream(written, true, StandardCharsets.UTF_8);

    private List<String> in(Map<String, String> environment) {
        LogForm.of(environment, plain, () -> Instant.EPOCH).println(LINE);
        return written.toString(StandardCharsets.UTF_8).lines().toList();
    }

    @Test
    void aTerminalHasItPlain() {
        assertThat(in(Map.of())).containsExactly(LINE);
    }

    @Test
    void theSystemsJournalHasLevels() {
        assertThat(in(Map.of("JOURNAL_STREAM", "8:1", "CUPBEAM_LOG", ""))).containsExactly("<6>Link - connected");
    }

    @Test
    void whoeverWantsJsonHasIt() {
        assertThat(in(Map.of("JOURNAL_STREAM", "8:1", "CUPBEAM_LOG", "json"))).singleElement().asString().startsWith("{\"time\":\"1970-");
    }

    @Test
    void aFormThatThereIsNotIsSaidAndPassedOver() {
        assertThat(in(Map.of("JOURNAL_STREAM", "8:1", "CUPBEAM_LOG", "jsn\u001B"))).containsExactly(
                "<5>cupbeam: CUPBEAM_LOG: \"jsn\\u001B\" is no form of the log; json would do, or leave it out for lines to read",
                "<6>Link - connected");
    }

    /** A refusal is written by the command's own writer, and not by a logger. */
    @Test
    @Timeout(60)
    void whateverACommandSaysOnStandardErrorIsAnObjectALine(@TempDir Path folder) throws Exception {
        Path said = folder.resolve("said");
        ProcessBuilder lane = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
                System.getProperty("java.class.path"), Cupbeam.class.getName(), "lane", "--rig", folder.resolve("none.toml").toString(),
                "--practice", "--data", folder.toString());
        lane.environment().put("CUPBEAM_LOG", "json");
        Process process = lane.redirectErrorStream(true).redirectOutput(said.toFile()).start();

        assertThat(process.waitFor(50, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isEqualTo(2);
        List<String> lines = Files.readAllLines(said);
        assertThat(lines).isNotEmpty();
        for (String line : lines) {
            assertThat(new ObjectMapper().readTree(line).get("said").asText()).startsWith("cupbeam: ").contains("none.toml: no such file");
        }
    }
}
