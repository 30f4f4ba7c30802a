package org.cupbeam.studio.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Properties;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.postgresql.PGProperty;
import org.sqlite.JDBC;
import org.sqlite.SQLiteConfig;

/** Where a store lives, and how connections to it are made. The rest of the house does not ask which kind it is. */
public sealed interface Database {
    /** For people: where it is, without any password. */
    String name();

    /** As JDBC knows it. */
    String url();

    /** What is to be given beside that, where it asks for one; null otherwise. */
    default String passwordOrNull() {
        return null;
    }

    /** A connection that may write. */
    Connection writer() throws SQLException;

    /** A connection that may write, for work that takes minutes and sorts more than there is memory. */
    Connection patient() throws SQLException;

    /** A connection that the database itself keeps from writing. */
    Connection reader() throws SQLException;

    /** A connection for whoever looks from outside: not even its end changes what is there. It may take minutes. */
    Connection onlooker() throws SQLException;

    /**
     * Looks whether what is there can be read, before anything else is done with it.
     *
     * @throws StoreTrouble with what is wrong and what would do; what is there is left as it is
     */
    default void check() {
    }

    /** Whether that takes seconds. */
    default boolean checksLong() {
        return false;
    }

    /** Whether several hosts may be at it. */
    default boolean isShared() {
        return false;
    }

    /** Makes an empty store where there is none, so that it is there whole or not at all. */
    default void begin(Consumer<Database> make) {
    }

    /**
     * Gathers what queries are planned by, where the database does not see to that itself; outside any transaction.
     *
     * @param all whether of every table, or of those that have grown
     */
    default void tidy(Connection writer, boolean all) throws SQLException {
    }

    /** Keeps no copy of what was overwritten where the database itself can help it; outside any transaction. */
    default void scrub(Connection writer) throws SQLException {
    }

    /** A file of SQLite's. */
    static Database file(Path file) {
        return new Sqlite(file);
    }

    /** A database by its URL, as {@code jdbc:postgresql://host/name?user=…} or {@code jdbc:sqlite:file}. */
    static Database at(String url) {
        return at(url, null);
    }

    /** @param passwordOrNull of PostgreSQL's, where it is not in the URL */
    static Database at(String url, String passwordOrNull) {
        if (url.startsWith("jdbc:postgresql:") && !Postgres.NAME_BEFORE_HOST.matcher(url).find()) {
            return new Postgres(url, passwordOrNull);
        }
        if (url.startsWith(JDBC.PREFIX)) {
            return new Sqlite(Path.of(url.substring(JDBC.PREFIX.length())));
        }
        throw new StoreTrouble("store " + Postgres.shown(url) + ": not a kind of database that is known here; give "
                + "jdbc:postgresql://host/name?user=… or jdbc:sqlite:file", null);
    }

    /** SQLite: a file, written ahead, each commit synced, since a lane lets go of what is said to be kept. */
    record Sqlite(Path file) implements Database {
        private static final int BUSY_MS = 5_000;
        private static final long LONG_BYTES = 64 << 20; // about a second on a slow disk

        @Override
        public String name() {
            return file.toString();
        }

        @Override
        public String url() {
            return JDBC.PREFIX + file;
        }

        @Override
        public Connection writer() throws SQLException {
            SQLiteConfig config = config();
            config.setJournalMode(SQLiteConfig.JournalMode.WAL);
            config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
            config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
            config.setJournalSizeLimit(4 << 20);
            Connection connection = JDBC.createConnection(url(), config.toProperties());
            insist(connection, "journal_mode", "wal");
            insist(connection, "synchronous", "2");
            try (Statement pragma = connection.createStatement()) {
                pragma.execute("PRAGMA secure_delete = ON"); // a name that is removed is to be gone from the file
            }
            return connection;
        }

        @Override
        public Connection patient() throws SQLException {
            Connection connection = writer();
            try (Statement pragma = connection.createStatement()) {
                pragma.execute("PRAGMA temp_store = FILE");
            }
            return connection;
        }

        @Override
        public void scrub(Connection writer) throws SQLException {
            try (Statement pragma = writer.createStatement()) {
                pragma.execute("PRAGMA wal_checkpoint(TRUNCATE)");
            }
        }

        @Override
        public void check() {
            new Soundness(file).check();
        }

        @Override
        public boolean checksLong() {
            return file.toFile().length() > LONG_BYTES;
        }

        @Override
        public void begin(Consumer<Database> make) {
            new Beginning(file).unlessThere(half -> make.accept(new Sqlite(half)));
        }

        @Override
        public void tidy(Connection writer, boolean all) throws SQLException {
            try (Statement pragma = writer.createStatement()) {
                pragma.execute("PRAGMA analysis_limit = 400");
                pragma.execute(all ? "PRAGMA optimize = 0x10002" : "PRAGMA optimize");
            }
        }

        /** Some file systems cannot do what was asked, and SQLite then goes on without a word. */
        private void insist(Connection connection, String pragma, String value) throws SQLException {
            try (Statement statement = connection.createStatement();
                 ResultSet is = statement.executeQuery("PRAGMA " + pragma)) {
                if (!is.next() || !value.equalsIgnoreCase(is.getString(1))) {
                    connection.close();
                    throw new SQLException(file + " cannot be kept safely there: " + pragma + " is not " + value);
                }
            }
        }

        @Override
        public Connection reader() throws SQLException {
            Connection connection = JDBC.createConnection(url(), config().toProperties());
            try (Statement pragma = connection.createStatement()) {
                pragma.execute("PRAGMA query_only = ON");
            }
            return connection;
        }

        @Override
        public Connection onlooker() throws SQLException {
            SQLiteConfig config = config();
            config.setReadOnly(true);
            config.setTempStore(SQLiteConfig.TempStore.FILE);
            return JDBC.createConnection(url(), config.toProperties());
        }

        private static SQLiteConfig config() {
            SQLiteConfig config = new SQLiteConfig();
            config.enforceForeignKeys(true);
            config.setBusyTimeout(BUSY_MS);
            config.setTempStore(SQLiteConfig.TempStore.MEMORY);
            config.setCacheSize(-4_096); // KiB
            return config;
        }
    }

    /** PostgreSQL. */
    record Postgres(String url, String passwordOrNull) implements Database {
        private static final org.postgresql.Driver DRIVER = new org.postgresql.Driver();
        private static final Pattern NAME_BEFORE_HOST = Pattern.compile("//[^/?]*@");

        @Override
        public String name() {
            return shown(url);
        }

        @Override
        public String toString() {
            return name();
        }

        private static String shown(String url) {
            return NAME_BEFORE_HOST.matcher(url).replaceAll("//…@").replaceAll("(?i)(password=)[^&]*", "$1…");
        }

        @Override
        public boolean isShared() {
            return true;
        }

        /** A host that stops in the midst of writing does not keep the others from it. */
        @Override
        public Connection writer() throws SQLException {
            Connection connection = DRIVER.connect(url, properties());
            try (Statement statement = connection.createStatement()) {
                statement.execute("SET idle_in_transaction_session_timeout = '5s'");
            }
            return connection;
        }

        @Override
        public Connection reader() throws SQLException {
            Properties properties = properties();
            properties.setProperty(PGProperty.READ_ONLY.getName(), "true");
            properties.setProperty(PGProperty.READ_ONLY_MODE.getName(), "always");
            return DRIVER.connect(url, properties);
        }

        @Override
        public Connection patient() throws SQLException {
            return DRIVER.connect(url, patience());
        }

        @Override
        public Connection onlooker() throws SQLException {
            Properties properties = patience();
            properties.setProperty(PGProperty.READ_ONLY.getName(), "true");
            properties.setProperty(PGProperty.READ_ONLY_MODE.getName(), "always");
            return DRIVER.connect(url, properties);
        }

        private Properties patience() {
            Properties properties = properties();
            properties.setProperty(PGProperty.SOCKET_TIMEOUT.getName(), "0");
            return properties;
        }

        private Properties properties() {
            Properties properties = new Properties();
            if (passwordOrNull != null) {
                properties.setProperty(PGProperty.PASSWORD.getName(), passwordOrNull);
            }
            properties.setProperty(PGProperty.REWRITE_BATCHED_INSERTS.getName(), "true");
            properties.setProperty(PGProperty.CONNECT_TIMEOUT.getName(), "10");
            properties.setProperty(PGProperty.SOCKET_TIMEOUT.getName(), "60");
            properties.setProperty(PGProperty.APPLICATION_NAME.getName(), "cupbeam");
            return properties;
        }
    }
}
