package org.cupbeam.studio.kill;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** What a lane's journal or a host's store has on its disk, asked of a copy, so that nothing is touched. */
final class Kept implements AutoCloseable {
    private final Path folder;
    private final Connection connection;

    /** @param file nobody writes to it now */
    Kept(Path file) throws IOException, SQLException {
        folder = Files.createTempDirectory("cupbeam-kept");
        for (String part : new String[] {"", "-wal"}) {
            Path from = file.resolveSibling(file.getFileName() + part);
            if (Files.exists(from)) {
                Files.copy(from, folder.resolve("copy.db" + part));
            }
        }
        connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("copy.db"));
    }

    /** A journal's events, as they are published, in order; none of a file that has not got so far. */
    static List<byte[]> events(Path journal) throws IOException, SQLException {
        try (Kept kept = new Kept(journal)) {
            return kept.rows("SELECT count(*) FROM sqlite_schema WHERE name = 'event'").equals(List.of("1"))
                    ? kept.rows("SELECT CAST(payload AS TEXT) FROM event ORDER BY sequence").stream()
                            .map(text -> text.getBytes(StandardCharsets.UTF_8)).toList()
                    : List.of();
        }
    }

    /** Each row as its values, joined by a bar. */
    List<String> rows(String sql) throws SQLException {
        List<String> rows = new ArrayList<>();
        try (Statement statement = connection.createStatement(); ResultSet found = statement.executeQuery(sql)) {
            int columns = found.getMetaData().getColumnCount();
            while (found.next()) {
                StringBuilder row = new StringBuilder();
                for (int i = 1; i <= columns; i++) {
                    row.append(i == 1 ? "" : "|").append(found.getString(i));
                }
                rows.add(row.toString());
            }
        }
        return rows;
    }

    @Override
    public void close() throws IOException, SQLException {
        connection.close();
        try (var files = Files.list(folder)) {
            for (Path each : files.toList()) {
                Files.delete(each);
            }
        }
        Files.delete(folder);
    }
}
