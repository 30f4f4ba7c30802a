package org.cupbeam.studio;

import java.io.IOException;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.cupbeam.link.PasswordFile;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.StoreTrouble;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Where what the lanes say is kept. */
final class StoreOptions {
    private static final String STORE = "--store";
    private static final String FILE = "studio.db";
    private static final Pattern PASSWORD = Pattern.compile("(?i)[?&](ssl)?password=");

    @Option(names = STORE, paramLabel = "URL", defaultValue = "${env:CUPBEAM_STORE}",
            description = "store in PostgreSQL, as jdbc:postgresql://host/name?user=…; also read from the environment "
                    + "as CUPBEAM_STORE (default: SQLite in the data folder)")
    private String url;

    @Option(names = "--store-password-file", paramLabel = "FILE", defaultValue = "${env:CUPBEAM_STORE_PASSWORD_FILE}",
            description = "whose first line is the password for that; nobody but its owner may read it. Also read from "
                    + "the environment as CUPBEAM_STORE_PASSWORD_FILE")
    private Path passwordFile;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    /** @param folder of all data */
    Database database(Path folder) throws CannotStart {
        boolean elsewhere = url != null && !url.isEmpty();
        if (elsewhere && command.commandLine().getParseResult().hasMatchedOption(STORE) && PASSWORD.matcher(url).find()) {
            throw new CannotStart("--store: everybody on this machine can read what is on a command line, and there is a "
                    + "password in it", "write it in a file that nobody else may read, and name that by --store-password-file", null);
        }
        if (!elsewhere && passwordFile != null) {
            throw new CannotStart("--store-password-file: the store in the data folder asks for no password",
                    "name a database by --store, or leave it away", null);
        }
        try {
            String password = passwordFile == null ? null : PasswordFile.read(passwordFile);
            return elsewhere ? Database.at(url, password) : Database.file(folder.resolve(FILE));
        } catch (IOException e) {
            throw new CannotStart("--store-password-file: " + passwordFile + " cannot be read (" + e + ")",
                    "write the password in it", e);
        } catch (IllegalArgumentException e) {
            throw new CannotStart(e.getMessage(), "see --store-password-file", e);
        } catch (StoreTrouble e) {
            throw new CannotStart(e.getMessage(), "see --store", e);
        }
    }
}
