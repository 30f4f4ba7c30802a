package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

class QuickStartTest {
    private static LaneCommand withCare(String... arguments) {
        CommandLine lane = new CommandLine(new LaneCommand());
        lane.parseArgs(List.of(arguments).subList(1, arguments.length).toArray(String[]::new));
        return lane.getCommand();
    }

    /** Every option that there is, with a value that suits it. */
    private static List<String> everything() {
        List<String> arguments = new ArrayList<>(List.of("lane"));
        for (OptionSpec option : new CommandLine(new LaneCommand()).getCommandSpec().options()) {
            if (!option.usageHelp() && !option.versionHelp()) {
                arguments.add(option.longestName());
                if (option.arity().max() > 0) {
                    arguments.add(option.type() == double.class || option.type() == long.class ? "3" : "one,two");
                }
            }
        }
        return arguments;
    }

    @Test
    void everyOptionIsReadAsTheLibraryReadsIt() {
        String[] all = everything().toArray(String[]::new);
        assertThat(all).hasSizeGreaterThan(20);
        assertThat(QuickStart.lane(all)).usingRecursiveComparison().isEqualTo(withCare(all));
    }

    @Test
    void whatIsNotSaidIsAsTheLibraryHasIt() {
        String[] least = {"lane", "--seed", "1", "--rig", "rig.toml"};
        assertThat(QuickStart.lane(least)).usingRecursiveComparison().isEqualTo(withCare(least));
    }

    @Test
    void aFileOfOptionsIsReadAsTheLibraryReadsIt(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("lane.options"),
                "# the lane\n\n--rig  rig.toml\n  --seed 7\n--practice\n# --broker tcp://elsewhere:1883\n");
        String[] said = {"lane", "@" + file};
        assertThat(QuickStart.lane(said)).usingRecursiveComparison().isEqualTo(withCare(said))
                .isEqualTo(withCare("lane", "--rig", "rig.toml", "--seed", "7", "--practice"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--rig 'my rig.toml'", "--rig a # mine", "rig.toml", "--rig @more", "--rig a --practice", ""})
    void aFileThatIsNotPlainIsLeftToTheLibrary(String line, @TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("lane.options"), line + "\n--seed 1\n");
        assertThat(QuickStart.lane("lane", "@" + file)).isNull();
        assertThat(QuickStart.lane("lane", "@" + folder.resolve("nowhere"))).isNull();
    }

    @ParameterizedTest
    @ValueSource(strings = {"replay --rig a", "lane", "lane --help", "lane --rig a --help", "lane --rig", "lane --rig a b",
        "lane --rig=a", "lane --rig a --speed fast", "lane --rig a --sped 3", "lane --practice", "lane --rig --practice",
        "lane --rig a --seed 1.5", ""})
    void whatIsOutOfTheOrdinaryIsLeftToTheLibrary(String line) {
        assertThat(QuickStart.lane(line.split(" "))).isNull();
    }
}
