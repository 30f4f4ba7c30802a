package org.cupbeam.studio;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.StoreTrouble;
import org.cupbeam.studio.store.upkeep.Checkup;
import org.cupbeam.studio.store.upkeep.Copies;
import org.cupbeam.studio.store.upkeep.Rebuilt;
import org.cupbeam.studio.store.upkeep.Repair;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** Looks after a studio's store: the file studio.db in its data folder. */
@Command(name = "store", mixinStandardHelpOptions = true, synopsisSubcommandLabel = "(check | repair | rebuild | backup | restore)",
        description = {"Looks after a studio's store: the file studio.db in the folder of all data.",
            "check and backup may be run while the studio is."},
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done, or the store is sound", "1:the store is damaged, or something outside failed",
            "2:a file or an option makes no sense"})
final class StoreCommand {
    @Option(names = "--data", paramLabel = "FOLDER", defaultValue = "cupbeam-data", scope = ScopeType.INHERIT,
            description = "folder of all data (default: ./${DEFAULT-VALUE})")
    private Path data;

    @Option(names = "--store", paramLabel = "URL", defaultValue = "${env:CUPBEAM_STORE}", scope = ScopeType.INHERIT,
            description = "a store in PostgreSQL, as the studio takes it: check looks into it, pg_dump and pg_restore do the rest")
    private String url;

    @Spec
    private CommandSpec spec;

    private interface Deed {
        int done() throws IOException, CannotStart;
    }

    @Command(name = "check", mixinStandardHelpOptions = true,
            description = "Says whether the store is sound, and changes nothing. Exit status 1 where it is not.")
    int check() {
        return with(() -> {
            Database database = elsewhere() ? Database.at(url) : Database.file(there());
            Checkup is = Checkup.of(database);
            if (!is.isSound()) {
                say(database.name() + ": is damaged");
                is.troubles().forEach(each -> say("  " + each));
                say(elsewhere() ? "See pg_restore, and the last copy that pg_dump made" : "See 'store repair', and 'store restore' where there is a copy");
                return 1;
            }
            say(database.name() + ": is sound. " + counted(is) + (is.waiting() == 0 ? "" : "; before " + is.waiting() + " of them some are not "
                    + "there since a repair, and their lanes are asked for those") + (is.missing() == 0 ? ""
                    : "; " + is.missing() + " more were never sent, and are noted as missing")
                    + (is.isOfThisVersion() ? "" : ". Its tables are of version " + is.schema() + ": a start of this studio brings them up "
                            + "to date, and only then can all of it be checked")
                    + (elsewhere() ? ". Its pages are PostgreSQL's: pg_amcheck looks into those" : ""));
            return 0;
        });
    }

    @Command(name = "repair", mixinStandardHelpOptions = true, description = {
        "Makes a damaged store sound: what can be read of it, events by their check sums, is brought into a new one, which takes "
            + "its place; the damaged one is kept beside it. A sound one is left as it is.",
        "The studio must be stopped. Lanes send again what is gone and they still hold."})
    int repair(@Option(names = "--look", description = "says what would be kept and what would not, and changes nothing") boolean look) {
        return with(() -> {
            ours("pg_restore --clean --if-exists --single-transaction --dbname='" + uri() + "' studio.dump");
            Path file = there();
            try (DataFolder claimed = DataFolder.claim(data)) {
                Repair.Done done = look ? Repair.look(file) : Repair.of(file, Clock.systemUTC());
                if (done.is() == null) {
                    say(file + ": is sound, and stays as it is");
                    return 0;
                }
                say(file + (look ? ": would hold " : ": holds ") + counted(done.is()));
                done.said().forEach(each -> say("  " + each));
                say(look ? "Nothing was changed" : "What was there is now " + done.aside());
                return 0;
            }
        });
    }

    @Command(name = "backup", mixinStandardHelpOptions = true,
            description = "Copies the store to one file, also while the studio runs; a damaged one is refused.")
    int backup(@Parameters(paramLabel = "COPY.db", description = "no file that is there already") Path to) {
        return with(() -> {
            ours("pg_dump --format=custom --file=studio.dump --dbname='" + uri() + "'");
            try {
                say(to + ": is a copy of " + there() + " with " + counted(Copies.backup(there(), to)));
                return 0;
            } catch (FileAlreadyExistsException already) {
                throw new CannotStart(to + ": is there already, and stays as it is", "name another file", null);
            }
        });
    }

    @Command(name = "restore", mixinStandardHelpOptions = true, description = {
        "Puts a copy in the store's place; what was there is kept beside it.",
        "The studio must be stopped. Lanes send again what the copy lacks and they still hold."})
    int restore(@Parameters(paramLabel = "COPY.db", description = "what 'store backup' made") Path copy) {
        return with(() -> {
            ours("pg_restore --clean --if-exists --single-transaction --dbname='" + uri() + "' studio.dump");
            try (DataFolder claimed = DataFolder.claim(data)) {
                Path file = claimed.path().resolve("studio.db");
                Copies.Restored restored = Copies.restore(copy, file, Clock.systemUTC());
                say(file + ": is as in the copy, with " + counted(restored.is()) + ". Lanes send again what they hold of later ones. What "
                        + "staff wrote since the copy was made is not in it, and who was forgotten since is: forget them again"
                        + (restored.aside() == null ? "" : ". What was there is now " + restored.aside()));
                return 0;
            }
        });
    }

    @Command(name = "rebuild", mixinStandardHelpOptions = true, description = {
        "Makes the sums that pages ask anew from the runs and attempts, and says what was wrong with them.",
        "The studio must be stopped; with PostgreSQL it may run, and keeps nothing meanwhile."})
    int rebuild() {
        return with(() -> {
            if (elsewhere()) {
                return rebuilt(Database.at(url));
            }
            there();
            try (DataFolder claimed = DataFolder.claim(data)) {
                return rebuilt(Database.file(claimed.path().resolve("studio.db")));
            }
        });
    }

    private int rebuilt(Database database) {
        List<Rebuilt> all = Rebuilt.all(database);
        say(database.name() + ": its sums are made anew");
        all.forEach(each -> say("  " + each.rows() + " " + each.what() + (each.differed() == 0 ? ", as they were"
                : ", and " + each.differed() + " differed")));
        return 0;
    }

    private static String counted(Checkup is) {
        return is.events() + " events, " + is.attempts() + " attempts";
    }

    private int with(Deed deed) {
        try {
            return deed.done();
        } catch (CannotStart | StoreTrouble e) {
            return refused(e.getMessage(), 2);
        } catch (NoSuchFileException e) {
            return refused(e.getMessage() + ": there is no such file; name another, or the studio's folder with --data", 2);
        } catch (IOException e) {
            return refused(e.getMessage(), 1);
        }
    }

    private boolean elsewhere() {
        return url != null && !url.isEmpty();
    }

    private void ours(String postgresCommand) throws CannotStart {
        if (elsewhere()) {
            throw new CannotStart("the store is not a file of ours, but in PostgreSQL", "its own tools do that, also while the studio runs: "
                    + postgresCommand, null);
        }
    }

    /** As PostgreSQL's own tools take it; they ask for the password. */
    private String uri() {
        return elsewhere() ? Database.at(url).url().substring("jdbc:".length()).replaceAll("(?i)[?&]password=[^&]*$|password=[^&]*&", "") : "";
    }

    private Path there() throws CannotStart, NoSuchFileException {
        if (!Files.isDirectory(data)) {
            throw new CannotStart("there is no folder " + data.toAbsolutePath().normalize(), "name the studio's with --data", null);
        }
        Path file = data.toAbsolutePath().normalize().resolve("studio.db");
        if (!Files.isRegularFile(file)) {
            throw new NoSuchFileException(file.toString());
        }
        return file;
    }

    private int refused(String why, int status) {
        spec.commandLine().getErr().println(why);
        spec.commandLine().getErr().flush();
        return status;
    }

    private void say(String line) {
        spec.commandLine().getOut().println(line);
        spec.commandLine().getOut().flush();
    }
}
