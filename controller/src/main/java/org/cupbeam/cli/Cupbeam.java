package org.cupbeam.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.NoSuchFileException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;

/** The lane controller's commands. */
@Command(name = "cupbeam", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = "Watches one hole of an indoor putting green, and keeps the score of the drill.",
        subcommands = {LaneCommand.class, RecordCommand.class, ReplayCommand.class, HelpCommand.class},
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done", "1:something outside failed", "2:a file, an option or a command makes no sense"})
public final class Cupbeam {
    private Cupbeam() {
    }

    /** The commands, for whoever runs them with streams of their own. */
    public static CommandLine commands() {
        return new CommandLine(new Cupbeam())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler((failure, command, parsed) -> explain(failure, command.getErr()));
    }

    public static void main(String[] args) {
        System.exit(commands().execute(args));
    }

    /** Says in a line what went wrong. A stack trace is for our own faults alone. */
    private static int explain(Exception failure, PrintWriter err) {
        if (failure instanceof Refusal) {
            err.println("cupbeam: " + failure.getMessage());
            return 2;
        }
        if (failure instanceof NoSuchFileException missing) {
            err.println("cupbeam: " + missing.getFile() + ": there is no such file");
            return 2;
        }
        if (failure instanceof IOException || failure instanceof UncheckedIOException) {
            err.println("cupbeam: " + failure.getMessage());
            return 1;
        }
        err.println("cupbeam: a fault of its own; please report it with what follows");
        failure.printStackTrace(err);
        return 1;
    }
}
