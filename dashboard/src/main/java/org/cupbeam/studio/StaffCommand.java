package org.cupbeam.studio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.concurrent.Callable;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Migrations;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.StoreTrouble;
import org.cupbeam.studio.store.staff.Account;
import org.cupbeam.studio.store.staff.StaffBook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Puts right who may sign in, for whoever sits at the machine and may write its data: an owner forgot the secret, or has gone. */
@Command(name = "staff", mixinStandardHelpOptions = true, description = {
    "Says who of the staff signs in by name; gives one of them another secret, also one that was forgotten.",
    "Their sign-ins end. A studio that runs need not be stopped."})
final class StaffCommand implements Callable<Integer> {
    private static final String BY = "the studio computer";

    @Option(names = "--data", paramLabel = "FOLDER", defaultValue = "cupbeam-data",
            description = "folder of all data (default: ./${DEFAULT-VALUE})")
    private Path data;

    @Mixin
    private StoreOptions store = new StoreOptions();

    @Option(names = "--secret", paramLabel = "NAME",
            description = "whom to give another secret: asks for it, or takes a line of standard input")
    private String name;

    @Option(names = "--clear", description = "take everybody's name away: the PIN alone opens again, and may do everything")
    private boolean clear;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        try (Store there = open()) {
            if (clear) {
                int gone = there.write(h -> StaffBook.clear(h, BY, Clock.systemUTC().millis()));
                say(gone == 0 ? "Nobody signed in by name." : "Nobody signs in by name any more (" + gone + " did). The PIN opens again.");
            } else if (name != null) {
                Account account = there.read(h -> StaffBook.named(h, name)).orElseThrow(() -> new NoSuchElementException(
                        "Nobody signs in as \"" + name + "\": without --secret this command says who does."));
                String hash = Door.here(0, data).pin().secrets().hash(NewSecret.ask("secret"));
                there.write(h -> StaffBook.secret(h, Scope.ALL, account.id(), hash, BY, Clock.systemUTC().millis()));
                say(account.name() + " has another secret, and has to sign in with it now.");
            } else {
                list(there.read(StaffBook::all));
            }
            return 0;
        } catch (CannotStart | StoreTrouble | IllegalArgumentException | NoSuchElementException e) {
            spec.commandLine().getErr().println(e.getMessage());
            return 2;
        }
    }

    private Store open() throws CannotStart {
        if (!Files.isDirectory(data)) {
            throw new CannotStart("there is no folder " + data.toAbsolutePath().normalize(), "name the studio's with --data", null);
        }
        Database database = store.database(data.toAbsolutePath().normalize());
        boolean none = database instanceof Database.Sqlite sqlite && !Files.isRegularFile(sqlite.file());
        if (none || Migrations.due(database)) {
            throw new CannotStart(database.name() + " is not there, or is not of this version", "start this version of the studio on it once", null);
        }
        return Store.open(database);
    }

    private void list(List<Account> all) {
        if (all.isEmpty()) {
            say("Nobody signs in by name. The PIN opens.");
        }
        all.forEach(each -> say(each.name() + ": " + each.role().word() + ", "
                + (each.scope().isAll() ? "all studios" : each.scope().text())));
    }

    private void say(String line) {
        spec.commandLine().getOut().println(line);
        spec.commandLine().getOut().flush();
    }
}
