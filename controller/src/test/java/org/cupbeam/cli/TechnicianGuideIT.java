package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.cupbeam.DocTable;
import org.cupbeam.lane.Studio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The commands of the technician's guide, in its order, on a simulated green of the rig that the notes give. */
@Timeout(120)
class TechnicianGuideIT {
    private static final Pattern COMMAND = Pattern.compile("(?m)^ +java -jar controller/target/cupbeam-controller\\.jar (.*)$");

    @TempDir
    private Path folder;

    @Test
    void everyCommandOfTheGuideDoesWhatItSays() throws Exception {
        Files.copy(DocTable.project("hardware-notes/rigs/standard.toml"), folder.resolve("rig.toml"));
        List<List<String>> commands = COMMAND.matcher(Files.readString(DocTable.project("docs/technician.md"))).results()
                .map(each -> List.of(each.group(1).split(" "))).toList();

        assertThat(commands).hasSizeGreaterThan(5);
        for (List<String> command : commands) {
            switch (command.get(0)) {
                case "record" -> records(command);
                case "replay" -> replays(command);
                case "lane" -> runs(command);
                case "commission" -> commissions(command);
                default -> throw new AssertionError("the guide has a command that nothing here runs: " + command);
            }
        }
    }

    private void records(List<String> command) throws Exception {
        Path trace = folder.resolve(command.get(command.size() - 1));
        Process recording = start(command, "--practice", "--speed", "100", "--seed", "7");
        Studio.until("a trace", () -> Files.exists(trace) && Files.size(trace) > 10_000);
        end(recording);
    }

    private void replays(List<String> command) throws Exception {
        Jar.Outcome outcome = Jar.run(folder, here(command).toArray(String[]::new));

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        assertThat(outcome.out()).hasSizeGreaterThan(5).allSatisfy(line -> assertThat(line).contains("\"finish_mm\""));
    }

    private void commissions(List<String> command) throws Exception {
        boolean check = command.contains("--check");
        List<String> all = here(command);
        all.add("--practice");
        Path typed = Files.writeString(folder.resolve("typed"), check ? "\n".repeat(20)
                : CommissionIT.TO_THE_PLACES + "-300\n" + "\n".repeat(6) + "yes\n");
        Jar.Outcome outcome = Jar.answered(folder, typed, all.toArray(String[]::new));

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.out()).anyMatch(line -> line.contains(check ? "every sensor answers as it should" : "Written: "));
        assertThat(outcome.status()).isZero();
    }

    private void runs(List<String> command) throws Exception {
        Process lane = start(command, "--data", folder.resolve("data").toString(), "--broker", "tcp://127.0.0.1:1");
        Studio.until("it is ready", () -> Files.readString(folder.resolve("said")).contains("is ready"));
        end(lane);
    }

    private Process start(List<String> command, String... more) throws Exception {
        List<String> all = here(command);
        all.addAll(1, List.of(more));
        return new ProcessBuilder(Jar.command(all.toArray(String[]::new))).redirectErrorStream(true)
                .redirectOutput(folder.resolve("said").toFile()).start();
    }

    private static void end(Process process) throws InterruptedException {
        assertThat(process.isAlive()).as("it runs until interrupted").isTrue();
        process.destroy();
        assertThat(process.waitFor(10, TimeUnit.SECONDS)).isTrue();
    }

    /** The same with its files in this test's folder. */
    private List<String> here(List<String> command) {
        return new ArrayList<>(command.stream()
                .map(word -> word.matches(".*\\.(toml|vcd)") ? folder.resolve(word).toString() : word).toList());
    }
}
