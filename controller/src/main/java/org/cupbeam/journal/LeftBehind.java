package org.cupbeam.journal;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The statements about events that earlier journals of the lane left. Transactions are the caller's. */
final class LeftBehind {
    private final Database database;

    LeftBehind(Database database) {
        this.database = database;
    }

    void add(Map<Salvage.Key, byte[]> events) throws SQLException {
        try (PreparedStatement insert = database.connection().prepareStatement(
                "INSERT INTO left_behind (journal, sequence, payload, check_sum) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING")) {
            for (Map.Entry<Salvage.Key, byte[]> each : events.entrySet()) {
                insert.setString(1, each.getKey().journal());
                insert.setLong(2, each.getKey().sequence());
                insert.setBytes(3, each.getValue());
                insert.setString(4, CheckSum.of(each.getValue()));
                insert.executeUpdate();
            }
        }
    }

    long count() throws SQLException {
        return database.number("SELECT count(*) FROM left_behind");
    }

    /** The oldest; those of one journal in order, and after one another. */
    List<Outbox.Row> oldest(int max) throws SQLException {
        List<Outbox.Row> rows = new ArrayList<>();
        try (PreparedStatement select = database.connection().prepareStatement(
                "SELECT sequence, payload FROM left_behind ORDER BY journal, sequence LIMIT ?")) {
            select.setInt(1, max);
            try (ResultSet found = select.executeQuery()) {
                while (found.next()) {
                    rows.add(new Outbox.Row(found.getLong(1), found.getBytes(2)));
                }
            }
        }
        return rows;
    }

    void forget(String journal, long upTo) throws SQLException {
        try (PreparedStatement delete = database.connection().prepareStatement(
                "DELETE FROM left_behind WHERE journal = ? AND sequence <= ?")) {
            delete.setString(1, journal);
            delete.setLong(2, upTo);
            delete.executeUpdate();
        }
    }
}
