package org.cupbeam.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.IVersionProvider;

/** The lane controller's commands, and the words about them. */
@Command(name = "cupbeam", mixinStandardHelpOptions = true, versionProvider = Commands.Words.class,
        description = "Watches one hole of an indoor putting green, and keeps the score of the drill.",
        subcommands = {LaneCommand.class, JournalCommand.class, RecordCommand.class, ReplayCommand.class,
            CommissionCommand.class, HelpCommand.class},
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done", "1:something outside failed", "2:a file, an option or a command makes no sense",
            "3:the program hung, and has to be started again"})
public final class Commands {
    private Commands() {
    }

    /** All commands with their options, as {@code --help} tells of them. */
    public static CommandLine line() {
        return new CommandLine(new Commands()).setCaseInsensitiveEnumValuesAllowed(true);
    }

    static int execute(String... arguments) {
        return line()
                .setExecutionExceptionHandler((failure, command, parsed) -> Cupbeam.explain(failure, command.getErr()))
                .execute(arguments);
    }

    /** What {@code --version} says. */
    static final class Words implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"cupbeam " + Version.text()};
        }
    }
}
