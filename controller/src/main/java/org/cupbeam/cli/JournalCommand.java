package org.cupbeam.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.Instant;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Upkeep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Looks after a lane's journal: the file STUDIO.LANE.db in its data folder. */
@Command(name = "journal", mixinStandardHelpOptions = true, synopsisSubcommandLabel = "(check | backup | repair | restore)",
        description = {"Looks after a lane's journal: the file STUDIO.LANE.db in the lane's data folder.",
            "check and backup may be run while the lane is."},
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done, or the journal is sound", "1:the journal is damaged, or something outside failed",
            "2:a file or an option makes no sense"})
final class JournalCommand {
    private static final String SAVED = " events, which the lane sends as they are until the studio has them. The play"
            + " begins anew";

    @Spec
    private CommandSpec spec;

    @Command(name = "check", mixinStandardHelpOptions = true,
            description = "Says whether a journal is sound, and changes nothing. Exit status 1 where it is not.")
    int check(@Parameters(paramLabel = "JOURNAL.db", description = "the journal") Path file)
            throws IOException, Refusal {
        journal(file);
        Upkeep.State is = Upkeep.check(file);
        if (is.trouble() != null) {
            say(file + ": is damaged (" + is.trouble() + "); " + is.events() + " events can be read; see 'journal repair'");
            return 1;
        }
        say(file + ": is sound. Journal " + is.id() + ", " + is.events() + " events, " + is.unsent()
                + " not yet known to be in the studio's store" + (is.left() == 0 ? ""
                        : ", and " + is.left() + " of earlier journals"));
        return 0;
    }

    @Command(name = "backup", mixinStandardHelpOptions = true,
            description = "Copies a journal to one file, also while the lane runs; a damaged one is refused.")
    int backup(@Parameters(paramLabel = "JOURNAL.db", description = "the journal") Path file,
            @Parameters(paramLabel = "COPY.db", description = "no file that is there already") Path to)
            throws IOException, Refusal {
        journal(file);
        Refusal.ofFolder(to, "a file for the copy");
        try {
            Upkeep.State is = Upkeep.backup(file, to);
            say(to + ": is a copy of journal " + is.id() + " with " + is.events() + " events");
            return 0;
        } catch (FileAlreadyExistsException there) {
            throw new Refusal(to + ": is there already, and stays as it is; name another file");
        }
    }

    @Command(name = "repair", mixinStandardHelpOptions = true, description = {
        "Begins a damaged journal anew with what can be read of it, and keeps the damaged file beside it.",
        "The lane must be stopped. It does the same by itself when it finds its journal damaged at its start."})
    int repair(@Parameters(paramLabel = "JOURNAL.db", description = "the journal") Path file)
            throws IOException, Refusal {
        journal(file);
        Upkeep.Begun begun = with(() -> Upkeep.repair(file, Instant.now()));
        if (begun == null) {
            say(file + ": is sound, and stays as it is");
        } else {
            say(file + ": is now journal " + begun.id() + ". Saved " + begun.events() + SAVED + ". The damaged file is "
                    + begun.aside());
        }
        return 0;
    }

    @Command(name = "restore", mixinStandardHelpOptions = true, description = {
        "Begins a lane's journal anew from a copy, and from what can be read of the one that is there, which is kept.",
        "The lane must be stopped. The new journal has an id of its own: the old one may have used numbers since the"
                + " copy was made."})
    int restore(@Parameters(paramLabel = "COPY.db", description = "what 'journal backup' made") Path copy,
            @Parameters(paramLabel = "JOURNAL.db", description = "the lane's journal, there or not") Path file)
            throws IOException, Refusal {
        Refusal.ofFolder(copy, "a copy");
        journal(file);
        Upkeep.Begun begun = with(() -> Upkeep.restore(copy, file, Instant.now()));
        say(file + ": is now journal " + begun.id() + ". Took over " + begun.events() + SAVED
                + (begun.aside() == null ? "" : ". What was there is now " + begun.aside()));
        return 0;
    }

    private static void journal(Path file) throws Refusal {
        Refusal.ofFolder(file, "a journal, STUDIO.LANE.db,");
    }

    private interface Deed {
        Upkeep.Begun done() throws IOException, JournalException;
    }

    private static Upkeep.Begun with(Deed deed) throws IOException, Refusal {
        try {
            return deed.done();
        } catch (JournalException e) {
            switch (e.kind()) {
                case IN_USE, FOREIGN, NEWER -> throw new Refusal(e);
                case FULL, READ_ONLY, DAMAGED, FAILED -> throw new IOException(e.getMessage(), e);
            }
            throw new IllegalStateException(e);
        }
    }

    private void say(String line) {
        spec.commandLine().getOut().println(line);
        spec.commandLine().getOut().flush();
    }
}
