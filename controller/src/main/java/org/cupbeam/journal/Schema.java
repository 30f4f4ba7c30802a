package org.cupbeam.journal;

import java.nio.file.Path;
import java.sql.SQLException;

/** Which version of the tables a file has, told at a glance by its {@code user_version}. */
final class Schema {
    /** The version that this program reads and writes: the number of the last script. */
    static final int VERSION = 3;
    /** The first whose events have check sums. */
    static final int WITH_CHECK_SUMS = 3;

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
}
