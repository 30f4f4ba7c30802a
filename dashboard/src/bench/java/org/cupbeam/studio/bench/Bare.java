package org.cupbeam.studio.bench;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A store without its indexes for a while, so that many rows are written fast. */
abstract class Bare {
    private final Connection connection;

    Bare(Connection connection) {
        this.connection = connection;
    }

    abstract void begin(List<String> tables) throws SQLException;

    abstract void end() throws SQLException;

    final void run(String... statements) throws SQLException {
        for (String each : statements) {
            long began = System.nanoTime();
            try (Statement statement = connection.createStatement()) {
                statement.execute(each);
            }
            if (System.nanoTime() - began > 5_000_000_000L) {
                GrowBench.say("%.0f s: %s", (System.nanoTime() - began) / 1e9, each);
            }
        }
    }

    final List<String> texts(String sql) throws SQLException {
        List<String> all = new ArrayList<>();
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            while (row.next()) {
                all.add(row.getString(1));
            }
        }
        return all;
    }

    private static String quoted(List<String> names) {
        return names.stream().collect(Collectors.joining("', '", "'", "'"));
    }

    /** One that is named by its CREATE INDEX can go; a table's own UNIQUE cannot. */
    static final class OfSqlite extends Bare {
        private List<String> indexes;

        OfSqlite(Connection connection) {
            super(connection);
        }

        @Override
        void begin(List<String> tables) throws SQLException {
            run("PRAGMA journal_mode = OFF", "PRAGMA synchronous = OFF", "PRAGMA foreign_keys = OFF", "PRAGMA cache_size = -600000");
            String named = " FROM sqlite_master WHERE type = 'index' AND sql IS NOT NULL AND tbl_name IN (" + quoted(tables) + ")";
            indexes = texts("SELECT sql" + named);
            for (String each : texts("SELECT name" + named)) {
                run("DROP INDEX " + each);
            }
            run("BEGIN");
        }

        @Override
        void end() throws SQLException {
            run("COMMIT");
            run(indexes.toArray(String[]::new));
            run("ANALYZE", "PRAGMA journal_mode = WAL");
        }
    }

    /** All of them can go; foreign keys are put back without looking at every row again. */
    static final class OfPostgres extends Bare {
        private final List<String> back = new ArrayList<>();
        private List<String> tables;

        OfPostgres(Connection connection) {
            super(connection);
        }

        @Override
        void begin(List<String> grown) throws SQLException {
            tables = grown;
            run("SET synchronous_commit = off", "SET maintenance_work_mem = '1GB'");
            String ours = " FROM pg_constraint WHERE conrelid::regclass::text IN (" + quoted(tables) + ")";
            List<String> foreign = texts("SELECT 'ALTER TABLE ' || conrelid::regclass || ' ADD CONSTRAINT ' || conname || ' ' "
                    + "|| pg_get_constraintdef(oid) || ' NOT VALID' FROM pg_constraint WHERE contype = 'f'");
            List<String> keys = texts("SELECT 'ALTER TABLE ' || conrelid::regclass || ' ADD CONSTRAINT ' || conname || ' ' "
                    + "|| pg_get_constraintdef(oid)" + ours + " AND contype IN ('p', 'u') ORDER BY conindid::regclass::text");
            String drop = "SELECT 'ALTER TABLE ' || conrelid::regclass || ' DROP CONSTRAINT ' || conname";
            run(texts(drop + " FROM pg_constraint WHERE contype = 'f'").toArray(String[]::new));
            run(texts(drop + ours + " AND contype IN ('p', 'u')").toArray(String[]::new));
            String indexes = " FROM pg_indexes WHERE schemaname = current_schema() AND tablename IN (" + quoted(tables) + ")";
            List<String> others = texts("SELECT indexdef" + indexes);
            run(texts("SELECT 'DROP INDEX ' || indexname" + indexes).toArray(String[]::new));
            back.addAll(keys);
            back.addAll(others);
            back.addAll(foreign);
        }

        @Override
        void end() throws SQLException {
            for (String each : tables) {
                run("VACUUM (ANALYZE) " + each);
            }
            run(back.toArray(String[]::new));
        }
    }
}
