package org.cupbeam.journal;

import java.nio.file.Path;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteDataSource;

/**
 * Brings a file up to date by Flyway, with the scripts beside this class; the last line of each sets
 * {@code user_version}, so that an ordinary start need not even load Flyway.
 */
final class Migration {
    private Migration() {
    }

    /** Nobody else may have the file open. */
    static void run(Path file) throws JournalException {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl(Database.url(file));
        try {
            Flyway.configure(Migration.class.getClassLoader())
                    .dataSource(source)
                    .locations("classpath:org/cupbeam/journal")
                    .validateMigrationNaming(true)
                    .cleanDisabled(true)
                    .load().migrate();
        } catch (FlywayException e) {
            throw new JournalException(JournalException.Kind.FAILED, file + ": its tables could not be brought up to "
                    + "date (" + e.getMessage() + "); nothing was changed", e);
        }
    }
}
