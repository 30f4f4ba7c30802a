package org.cupbeam.studio.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.cupbeam.cli.Commands;
import org.cupbeam.studio.Studio;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The reference has every command with every option, as the program itself describes them; {@code -Dcupbeam.tables=write} writes it. */
class ReferenceTest {
    private static final Path REFERENCE = Doc.ROOT.resolve("docs/reference.md");
    private static final Set<String> OF_ALL = Set.of("--help", "--version");

    @Test
    void hasTheLanesCommands() throws Exception {
        says("lane", Commands.line());
    }

    @Test
    void hasTheStudiosCommands() throws Exception {
        says("studio", new CommandLine(new Studio()));
    }

    private static void says(String name, CommandLine program) throws IOException {
        List<String> lines = new ArrayList<>();
        tell(program, lines);
        assertThat(lines).hasSizeGreaterThan(10);
        Tables.holds(REFERENCE, name, lines.subList(0, lines.size() - 1));
    }

    private static void tell(CommandLine command, List<String> lines) {
        CommandSpec spec = command.getCommandSpec();
        lines.add("### `" + spec.qualifiedName() + "`");
        lines.add("");
        lines.add(String.join(" ", spec.usageMessage().description()));
        lines.add("");
        List<String> rows = new ArrayList<>();
        spec.positionalParameters().forEach(each -> rows.add(row(each.paramLabel(), each)));
        for (OptionSpec each : spec.options()) {
            if (!OF_ALL.contains(each.longestName())) {
                rows.add(row(each.longestName() + (each.arity().max() > 0 ? " " + each.paramLabel() : ""), each));
            }
        }
        if (!rows.isEmpty()) {
            lines.addAll(List.of("| | |", "| --- | --- |"));
            lines.addAll(rows);
            lines.add("");
        }
        if (!spec.usageMessage().exitCodeList().isEmpty()) {
            lines.add("Exit status: " + spec.usageMessage().exitCodeList().entrySet().stream()
                    .map(each -> each.getKey() + ", " + each.getValue()).collect(Collectors.joining("; ")) + ".");
            lines.add("");
        }
        command.getSubcommands().values().stream().distinct().filter(each -> !each.getCommandName().equals("help"))
                .forEach(each -> tell(each, lines));
    }

    private static String row(String name, ArgSpec each) {
        return "| `" + name + "` | " + String.join(" ", each.description()).replace("|", "\\|")
                + (each.required() && each.isOption() ? "; has to be given" : "")
                + (each.splitRegex().isEmpty() ? "" : "; more than one: with commas") + " |";
    }
}
