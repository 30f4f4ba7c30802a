package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import org.cupbeam.edge.practice.Evening;
import org.cupbeam.edge.practice.EveningFiles;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.lane.Studio;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The record command, on a simulated green. */
@Timeout(120)
class RecordIT {
    @TempDir
    private Path folder;
    private Path rig;

    @BeforeEach
    void furnish() throws Exception {
        EveningFiles.write(Evening.simulate(1, PracticeLane.clean(PracticeRigs.FULL.level()), 1), folder, Instant.EPOCH);
        rig = folder.resolve("rig.toml");
    }

    @Test
    void whatWasRecordedUntilItWasInterruptedReplays() throws Exception {
        Path out = folder.resolve("new.vcd");
        Process recording = new ProcessBuilder(Jar.command("record", "--rig", rig.toString(), "--practice", "--speed",
                "100", "--seed", "3", out.toString())).redirectErrorStream(true)
                .redirectOutput(folder.resolve("said").toFile()).start();
        Studio.until("an evening's worth of edges", () -> Files.exists(out) && Files.size(out) > 10_000);
        recording.destroy();
        assertThat(recording.waitFor(10, TimeUnit.SECONDS)).isTrue();
        assertThat(folder.resolve("said")).content().startsWith("cupbeam: recording to " + out);

        Jar.Outcome replay = Jar.run(folder, "replay", "--rig", rig.toString(), out.toString());
        assertThat(replay.err()).isEmpty();
        assertThat(replay.status()).isZero();
        assertThat(replay.out()).hasSizeGreaterThan(5);
    }

    @Test
    void aFileThatIsThereStaysAsItIs() throws Exception {
        Path out = Files.writeString(folder.resolve("mine.vcd"), "mine");
        Jar.Outcome outcome = Jar.run(folder, "record", "--rig", rig.toString(), "--practice", out.toString());

        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err()).contains("is there already");
        assertThat(out).content().isEqualTo("mine");
    }
}
