package org.cupbeam.studio.store;

import java.util.Arrays;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.callback.Callback;
import org.jdbi.v3.core.Handle;

/**
 * Brings a database to the schema that this version knows, from any earlier one, or from nothing. A database that a later
 * version has been at is refused and left as it is: what this version would write there might be wrong by then.
 */
public final class Migrations {
    /** The schema that this version knows: the newest file's. */
    public static final String LATEST = "20";

    /** Not the default folder: the lanes' journals have migrations of their own on the same class path. */
    private static final String WHERE = "classpath:db/studio";

    private Migrations() {
    }

    static void run(Database database) {
        run(database, "latest");
    }

    /** Whether anything is left to be done to it, or to be said against it. */
    public static boolean due(Database database) {
        try {
            Flyway ready = flyway(database, "latest");
            ready.validate();
            return ready.info().pending().length > 0;
        } catch (FlywayException e) {
            return true;
        }
    }

    /** @param target the schema's version to stop at */
    static void run(Database database, String target) {
        try {
            Flyway ready = flyway(database, target);
            refuseWhatIsNewer(database, ready);
            ready.migrate();
        } catch (FlywayException e) {
            throw new StoreTrouble("store " + database.name() + ": " + firstLine(e) + "; name another store, or restore this one from a copy", e);
        }
    }

    /**
     * Looks within a transaction whether a newer version has been at a database since it was opened.
     *
     * @throws StoreTrouble where one has
     */
    static void refuseWhatIsNewer(Database database, Handle h) {
        int there = h.createQuery("SELECT max(CAST(version AS INTEGER)) FROM flyway_schema_history WHERE success").mapTo(Integer.class).one();
        if (there > Integer.parseInt(LATEST)) {
            throw new StoreTrouble("store " + database.name() + " was brought up to date by a newer version of Cupbeam while this one ran (its "
                    + "schema is " + there + ", this version knows up to " + LATEST + "); this one writes nothing more. Stop it, and run the "
                    + "newer version", null);
        }
    }

    private static Flyway flyway(Database database, String target) {
        Callback[] callbacks = database.isShared() ? new Callback[] {new UnderThePen()} : new Callback[0];
        return Flyway.configure().callbacks(callbacks).dataSource(database.url(), null, database.passwordOrNull()).locations(WHERE).target(target)
                .loggers("slf4j").connectRetries(0).group(true).cleanDisabled(true).validateMigrationNaming(true).load();
    }

    private static void refuseWhatIsNewer(Database database, Flyway flyway) {
        MigrationInfo[] all = flyway.info().all();
        MigrationVersion known = Arrays.stream(all).filter(each -> each.getState().isResolved())
                .map(MigrationInfo::getVersion).max(MigrationVersion::compareTo).orElse(MigrationVersion.EMPTY);
        Optional<MigrationVersion> there = Arrays.stream(all).filter(each -> each.getState().isApplied())
                .map(MigrationInfo::getVersion).max(MigrationVersion::compareTo);
        if (there.isPresent() && there.get().compareTo(known) > 0) {
            throw new StoreTrouble("store " + database.name() + " was written by a newer version of Cupbeam (its schema is "
                    + there.get() + ", this version knows up to " + known + "); nothing in it was changed. Run that newer "
                    + "version, name another store, or restore a copy from before the update", null);
        }
    }

    private static String firstLine(FlywayException e) {
        return e.getMessage().lines().map(String::strip).filter(line -> !line.isEmpty()).findFirst().orElse("");
    }
}
