package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.edge.practice.Evening;
import org.cupbeam.edge.practice.EveningFiles;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The replay command as other programs rely on it. */
@Timeout(120)
class ReplayIT {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int PUTTS = 40;
    private static final String DRILL = """
            name = "three and on"
            [stations]
            at_mm = [900, 1800]
            [balls]
            count = 3
            supply = "every-station"
            [advance]
            holed = 1
            [overshoot]
            limit_mm = 900
            penalty = "none"
            """;

    @TempDir
    private Path folder;
    private Path rig;
    private Path trace;

    @BeforeEach
    void recordAnEvening() throws IOException {
        Evening evening = Evening.simulate(7, PracticeLane.busy(PracticeRigs.FULL.level()), PUTTS);
        EveningFiles.write(evening, folder, Instant.EPOCH);
        rig = folder.resolve("rig.toml");
        trace = folder.resolve("trace.vcd");
    }

    @Test
    void everyAttemptIsOneLineOfJsonWithTheKeysThatArePromised() throws Exception {
        Jar.Outcome replay = Jar.run(folder, "replay", "--rig", rig.toString(), trace.toString());

        assertThat(replay.err()).isEmpty();
        assertThat(replay.status()).isZero();
        assertThat(replay.out()).hasSize(PUTTS);
        for (String line : replay.out()) {
            JsonNode attempt = JSON.readTree(line);
            assertThat(attempt.fieldNames()).toIterable().containsExactly("t_s", "outcome", "finish_mm",
                    "finish_sd_mm", "finish_between_mm", "overshoot", "speed_at_hole_mm_s", "pace_mm", "rim", "how");
            assertThat(attempt.get("finish_between_mm").size()).isEqualTo(2);
        }
    }

    @Test
    void withADrillEachLineSaysWhoseItWasAndTheEndsOfRunsFollow() throws Exception {
        Path drill = Files.writeString(folder.resolve("drill.toml"), DRILL);
        Jar.Outcome replay = Jar.run(folder, "replay", "--rig", rig.toString(), trace.toString(),
                "--drill", drill.toString(), "--players", "Ada,Ben");

        assertThat(replay.status()).as(replay.err()).isZero();
        List<JsonNode> lines = new ArrayList<>();
        for (String line : replay.out()) {
            lines.add(JSON.readTree(line));
        }
        assertThat(lines).filteredOn(line -> line.has("t_s")).hasSize(PUTTS).allSatisfy(line -> {
            assertThat(line.get("player").asText()).isIn("Ada", "Ben");
            assertThat(line.get("station").asInt()).isBetween(1, 2);
            assertThat(line.get("ball").asInt() + line.get("balls_left").asInt()).isLessThanOrEqualTo(3);
        });
        assertThat(lines).filteredOn(line -> line.has("run_ended")).isNotEmpty().allSatisfy(line ->
                assertThat(line.fieldNames()).toIterable().containsExactly("run_ended", "player", "stations_cleared",
                        "attempts", "holed", "ended_by"));
        assertThat(lines).filteredOn(line -> line.has("duel_ended")).isNotEmpty().allSatisfy(line ->
                assertThat(line.has("winner")).isTrue());
    }

    @Test
    void aGrowingTraceIsFollowed() throws Exception {
        byte[] whole = Files.readAllBytes(trace);
        Path growing = Files.write(folder.resolve("growing.vcd"), new byte[0]);
        Process tail = new ProcessBuilder(
                Jar.command("replay", "--rig", rig.toString(), "--tail", growing.toString())).start();
        try (BufferedReader lines = new BufferedReader(
                new InputStreamReader(tail.getInputStream(), StandardCharsets.UTF_8))) {
            // Cut in mid-word, as a writer's buffer would.
            append(growing, whole, 0, whole.length / 2 + 1);
            String first = lines.readLine();
            append(growing, whole, whole.length / 2 + 1, whole.length);
            List<String> seen = new ArrayList<>(List.of(first));
            while (seen.size() < PUTTS - 1) {
                seen.add(lines.readLine());
            }
            List<String> atOnce = Jar.run(folder, "replay", "--rig", rig.toString(), trace.toString()).out();
            assertThat(seen).isEqualTo(atOnce.subList(0, PUTTS - 1));
            assertThat(tail.isAlive()).as("goes on").isTrue();
        } finally {
            tail.destroy();
        }
        assertThat(tail.waitFor(5, TimeUnit.SECONDS)).as("ends when asked to").isTrue();
    }

    private static void append(Path file, byte[] bytes, int from, int to) throws IOException {
        Files.write(file, Arrays.copyOfRange(bytes, from, to), StandardOpenOption.APPEND);
    }

    @Test
    void whatMakesNoSenseIsSaidInALineWithStatusTwo() throws Exception {
        Path broken = Files.writeString(folder.resolve("broken.toml"), "[green]\nstimp_ft = \"fast\"\n");
        Path rubbish = Files.writeString(folder.resolve("rubbish.vcd"), "hello\n");
        Path drill = Files.writeString(folder.resolve("drill.toml"), DRILL.replace("holed = 1", "holed = 9"));

        refused("stimp_ft", "replay", "--rig", broken.toString(), trace.toString());
        refused("rubbish.vcd:1", "replay", "--rig", rig.toString(), rubbish.toString());
        refused("no such file", "replay", "--rig", rig.toString(), folder.resolve("none.vcd").toString());
        refused("holed", "replay", "--rig", rig.toString(), trace.toString(), "--drill", drill.toString());
        refused("--drill", "replay", "--rig", rig.toString(), trace.toString(), "--players", "Ada");
        refused("--rig", "replay", trace.toString());
        refused("reply", "reply");
    }

    private void refused(String about, String... arguments) throws Exception {
        Jar.Outcome outcome = Jar.run(folder, arguments);
        assertThat(outcome.status()).as(outcome.err()).isEqualTo(2);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err()).contains(about).doesNotContain("\tat ");
    }
}
