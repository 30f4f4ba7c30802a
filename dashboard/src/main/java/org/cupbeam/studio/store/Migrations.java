package org.cupbeam.studio.store;

import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.configuration.FluentConfiguration;

/**
 * Brings a database to the schema that this version knows, from any earlier one, or from nothing. Migrations only ever
 * add, so a database that a later version has been at opens as well.
 */
final class Migrations {
    /** Not the default folder: the lanes' journals have migrations of their own on the same class path. */
    private static final String WHERE = "classpath:db/studio";

    private Migrations() {
    }

    static void run(Database database) {
        run(database, "latest");
    }

    /** @param target the schema's version to stop at */
    static void run(Database database, String target) {
        FluentConfiguration flyway = Flyway.configure().dataSource(database.url(), null, null).locations(WHERE)
                .target(target)
                .loggers("slf4j").connectRetries(0).group(true).cleanDisabled(true).validateMigrationNaming(true);
        try {
            flyway.load().migrate();
        } catch (FlywayException e) {
            throw new StoreTrouble("store " + database.name() + ": " + firstLine(e) + "; name another store, or restore this one from a copy", e);
        }
    }

    private static String firstLine(FlywayException e) {
        return e.getMessage().lines().map(String::strip).filter(line -> !line.isEmpty()).findFirst().orElse("");
    }
}
