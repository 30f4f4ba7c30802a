package org.cupbeam.journal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteException;

/** The one connection to a journal's file, with every setting that matters given and read back. */
final class Database implements AutoCloseable {
    /** Ours are told by this from other programs' files: {@code Cupb}. */
    static final int APPLICATION_ID = 1131769954;

    /** Before anything is read, and harmless to another program's file; so WAL needs no shared memory file. */
    private static final String[] EXCLUSIVE = {"locking_mode", "EXCLUSIVE", "exclusive"};

    /**
     * FULL: a commit returns when it is on the disk. Checkpoints are ours to time ({@link #checkpoint}); the automatic
     * one is a backstop.
     */
    private static final String[][] SETTINGS = {
            EXCLUSIVE,
            {"busy_timeout", "1000", "1000"},
            {"journal_mode", "WAL", "wal"},
            {"synchronous", "FULL", "2"},
            {"foreign_keys", "ON", "1"},
            {"wal_autocheckpoint", "2000", "2000"},
            {"journal_size_limit", "4194304", "4194304"},
            {"temp_store", "MEMORY", "2"},
            {"mmap_size", "0", "0"},
            {"trusted_schema", "OFF", "0"},
            {"cell_size_check", "ON", "1"},
    };

    private final Path file;
    private final Connection connection;

    private Database(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
    }

    static String url(Path file) {
        return "jdbc:sqlite:" + file;
    }

    /** Opens a file to look at it; nothing in it is changed yet. */
    static Database open(Path file) throws SQLException {
        Connection connection = new SQLiteConfig().createConnection(url(file));
        Database database = new Database(file, connection);
        try {
            database.set(EXCLUSIVE);
            return database;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    /** Sets it up for writing. */
    void configure() throws SQLException {
        for (String[] setting : SETTINGS) {
            set(setting);
        }
    }

    private void set(String[] setting) throws SQLException {
        execute("PRAGMA " + setting[0] + " = " + setting[1]);
        String is = text("PRAGMA " + setting[0]);
        if (!setting[2].equals(is)) {
            throw new SQLException("PRAGMA " + setting[0] + " is " + is + " though set to " + setting[1]);
        }
    }

    /** How SQLite is set up now, for a test or for whoever asks. */
    Map<String, String> settings() throws SQLException {
        Map<String, String> settings = new TreeMap<>();
        for (String[] setting : SETTINGS) {
            settings.put(setting[0], text("PRAGMA " + setting[0]));
        }
        return settings;
    }

    Connection connection() {
        return connection;
    }

    void execute(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** The first column of the first row; null where there is none. */
    String text(String sql) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getString(1) : null;
        }
    }

    long number(String sql) throws SQLException {
        String text = text(sql);
        return text == null ? 0 : Long.parseLong(text);
    }

    /** Something done whole or not at all. */
    interface Work<T> {
        T run() throws SQLException;
    }

    /** Commits, and returns when that is on the disk; rolls back if the work or the commit fails. */
    <T> T transaction(Work<T> work) throws SQLException {
        execute("BEGIN IMMEDIATE");
        try {
            T result = work.run();
            execute("COMMIT");
            return result;
        } catch (SQLException | RuntimeException e) {
            try {
                execute("ROLLBACK");
            } catch (SQLException none) {
                e.addSuppressed(none); // SQLite has rolled back by itself
            }
            throw e;
        }
    }

    /** Moves what the write-ahead log holds into the file, as far as that goes now. */
    void checkpoint() throws SQLException {
        execute("PRAGMA wal_checkpoint(PASSIVE)");
    }

    JournalException failure(SQLException e) {
        return failure(file, e);
    }

    /** An error of SQLite in words. */
    static JournalException failure(Path file, SQLException e) {
        String code = e instanceof SQLiteException sqlite ? sqlite.getResultCode().name() : "";
        if (code.startsWith("SQLITE_FULL")) {
            return failure(JournalException.Kind.FULL, file, "the disk is full", "make room", e);
        }
        if (code.startsWith("SQLITE_READONLY") || code.startsWith("SQLITE_CANTOPEN") || code.startsWith("SQLITE_PERM")) {
            return failure(JournalException.Kind.READ_ONLY, file, "cannot be written",
                    "see that this user may write it and its folder, and that the disk is not mounted read-only", e);
        }
        if (isDamage(e)) {
            return failure(JournalException.Kind.DAMAGED, file, "is damaged",
                    "start again: it is then moved aside and a new one begun", e);
        }
        if (code.startsWith("SQLITE_BUSY") || code.startsWith("SQLITE_LOCKED")) {
            return failure(JournalException.Kind.IN_USE, file, "another program has it open", "close that", e);
        }
        return failure(JournalException.Kind.FAILED, file, "cannot be read or written", "look after the disk", e);
    }

    static boolean isDamage(SQLException e) {
        return e instanceof SQLiteException sqlite && (sqlite.getResultCode().name().startsWith("SQLITE_CORRUPT")
                || sqlite.getResultCode().name().startsWith("SQLITE_NOTADB"));
    }

    private static JournalException failure(JournalException.Kind kind, Path file, String what, String remedy,
            SQLException e) {
        return new JournalException(kind, String.format(Locale.ROOT, "%s: %s (%s); %s", file, what, e.getMessage(),
                remedy), e);
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
