package org.cupbeam.journal;

import java.sql.SQLException;

/** Makes a journal's disk refuse to be written, and take again. */
public final class FailingDisk {
    private FailingDisk() {
    }

    public static void fails(Journal<?> journal, boolean whether) {
        try {
            journal.database().execute("PRAGMA query_only = " + (whether ? "ON" : "OFF"));
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }
}
