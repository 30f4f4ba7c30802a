package org.cupbeam.journal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;

/** What opening a journal takes longest for, done ahead of it, on a thread that has nothing else to do. */
public final class Ahead {
    private static final Logger LOG = LoggerFactory.getLogger(Ahead.class);

    private Ahead() {
    }

    /** Loads SQLite where there is a journal already; where there is none, nothing is begun. */
    public static void of(Path journal) {
        if (!Files.exists(journal)) {
            return;
        }
        NativeLibrary.unpackInto(journal.toAbsolutePath().getParent());
        try (Connection nowhere = new SQLiteConfig().createConnection("jdbc:sqlite::memory:")) {
            nowhere.createStatement().close();
        } catch (SQLException e) {
            LOG.debug("not ahead; opening it will tell why", e);
        }
    }
}
