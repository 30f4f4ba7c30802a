package org.cupbeam.journal;

import java.nio.file.Path;
import java.sql.SQLException;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteDataSource;

/**
 * Which version of the tables a file has. The scripts are Flyway's, beside this class; the last of each sets
 * {@code user_version}, so that an ordinary start can tell at a glance that Flyway has nothing to do.
 */
final class Schema {
    /** The version that this program reads and writes: the number of the last script. */
    static final int VERSION = 1;

    private Schema() {
    }

    /** Whether there is something to do; refuses what is not ours, or ahead of us. */
    static boolean isBehind(Path file, Database database) throws SQLException, JournalException {
        long version = database.number("PRAGMA user_version");
        long application = database.number("PRAGMA application_id");
        boolean empty = database.number("SELECT count(*) FROM sqlite_schema") == 0;
        if (application != Database.APPLICATION_ID && !empty) {
            throw new JournalException(JournalException.Kind.FOREIGN, file + ": is another program's database; "
                    + "name another file for the journal", null);
        }
        if (version > VERSION) {
            throw new JournalException(JournalException.Kind.NEWER, file + ": was written by a later version (tables "
                    + version + ", this one knows " + VERSION + "); run that version, or move the file away", null);
        }
        return version < VERSION;
    }

    /** Brings a file up to date. Nobody else may have it open. */
    static void migrate(Path file) throws JournalException {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl(Database.url(file));
        try {
            Flyway.configure(Schema.class.getClassLoader())
                    .dataSource(source)
                    .locations("classpath:org/cupbeam/journal")
                    .validateMigrationNaming(true)
                    .cleanDisabled(true)
                    .load().migrate();
        } catch (FlywayException e) {
            throw new JournalException(JournalException.Kind.FAILED, file + ": its tables could not be brought from "
                    + "an earlier version to this one (" + e.getMessage() + "); nothing was changed", e);
        }
    }
}
