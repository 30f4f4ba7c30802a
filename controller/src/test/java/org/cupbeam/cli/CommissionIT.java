package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.cupbeam.lane.Studio;
import org.cupbeam.rig.RigFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The commission command on a simulated lane, answered through a pipe. */
@Timeout(180)
class CommissionIT {
    /** Settle, nine sensors, the quiet minute, the height, six balls. */
    static final String TO_THE_PLACES = "\n".repeat(11) + "\n" + "\n".repeat(6) + "done\n";
    private static final String TO_THE_END = TO_THE_PLACES + "-300\n" + "\n".repeat(5) + "\n";

    @TempDir
    private Path folder;

    @Test
    void aNewLaneIsLedThroughWrittenAndCheckedAndNothingIsOverwrittenUnasked() throws Exception {
        Path rig = folder.resolve("rig.toml");
        Jar.Outcome first = run(TO_THE_END + "\n", "--rig", rig.toString());
        assertThat(first.out()).anyMatch(line -> line.contains("Written: " + rig));
        assertThat(first.status()).isZero();
        assertThat(RigFile.read(rig).channels()).hasSize(9);
        String was = Files.readString(rig);

        Jar.Outcome unasked = run(TO_THE_END + "\n", "--rig", rig.toString());
        assertThat(unasked.out()).anyMatch(line -> line.contains("is there already: yes writes over it"));
        assertThat(unasked.status()).isEqualTo(1);
        assertThat(rig).content().isEqualTo(was);

        Files.writeString(rig, was + "# by hand\n");
        Jar.Outcome asked = run(TO_THE_END + "yes\n", "--rig", rig.toString());
        assertThat(asked.status()).isZero();
        assertThat(rig).content().doesNotContain("by hand");
        assertThat(folder.resolve("rig.toml.bak")).content().contains("by hand");
        assertThat(names()).containsExactlyInAnyOrder("rig.toml", "rig.toml.bak");

        Jar.Outcome check = run("\n".repeat(11), "--check", rig.toString());
        assertThat(check.out()).last().asString().contains("every sensor answers as it should");
        assertThat(check.status()).isZero();
    }

    @Test
    void interruptedItLeavesNothing() throws Exception {
        Path said = folder.resolve("said");
        Process process = new ProcessBuilder(Jar.command("commission", "--practice", "--rig", folder.resolve("rig.toml").toString()))
                .redirectErrorStream(true).redirectOutput(said.toFile()).start();
        try (OutputStream in = process.getOutputStream()) {
            in.write(TO_THE_END.getBytes(StandardCharsets.UTF_8));
            in.flush();
            Studio.until("the last step", () -> Files.readString(said).contains("Enter writes"));
            process.destroy();
            assertThat(process.waitFor(10, TimeUnit.SECONDS)).isTrue();
        }
        assertThat(names()).containsExactly("said");
    }

    @Test
    void whoeverQuitsIsToldWhatWasFoundAndMeasuredToWriteDown() throws Exception {
        Jar.Outcome quit = run(TO_THE_PLACES + "-300 1\nquit\n", "--rig", folder.resolve("rig.toml").toString());

        assertThat(quit.out()).anyMatch(line -> line.contains("nothing of what was found is kept"))
                .anyMatch(line -> line.contains("Found: before-1 GPIO 22 high") && line.contains("pedal GPIO 16 low"))
                .anyMatch(line -> line.contains("Measured: before-1 -300.0 ±1.0"));
        assertThat(quit.status()).isEqualTo(1);
        assertThat(names()).isEmpty();
    }

    @Test
    void withoutPinsItSaysSoInOneLineOfItsOwn() throws Exception {
        assumeFalse(Files.exists(Path.of("/dev/gpiochip0")), "there are pins here");
        Jar.Outcome outcome = Jar.run(Files.createTempDirectory("commission"), "commission", "--rig", folder.resolve("rig.toml").toString());

        assertThat(outcome.err()).startsWith("cupbeam: there are no pins here that can be read").contains("add --practice");
        assertThat(outcome.err().lines()).hasSize(1);
        assertThat(outcome.status()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"--sensors one,,two", "--pins 4,4", "--pins 99", "--pins x", "--check nowhere.toml", "--pull sideways",
        "--lamp", "--sensors strike"})
    void optionsThatMakeNoSenseEndWithTwoAndWords(String options) throws Exception {
        Jar.Outcome outcome = run("", options.split(" "));

        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err()).isNotBlank().doesNotContain("\tat ");
        assertThat(names()).isEmpty();
    }

    private List<String> names() throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(each -> each.getFileName().toString()).toList();
        }
    }

    private static Jar.Outcome run(String typed, String... options) throws Exception {
        Path aside = Files.createTempDirectory("commission");
        Path in = Files.writeString(aside.resolve("typed"), typed);
        return Jar.answered(aside, in, Stream.concat(Stream.of("commission", "--practice", "--seed", "7"), Stream.of(options))
                .toArray(String[]::new));
    }
}
