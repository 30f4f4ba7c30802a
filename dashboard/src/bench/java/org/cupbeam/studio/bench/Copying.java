package org.cupbeam.studio.bench;

import java.sql.Connection;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Writes a store's first rows once more, as another studio's or another year's. */
final class Copying {
    /** 53 weeks: no two years touch, and weekdays stay. */
    private static final long YEAR_MS = 371L * 86_400_000;
    private static final Set<String> OF_A_STUDIO = Set.of("studio", "lane", "player");
    private static final Map<String, String> REFERS_TO = Map.ofEntries(Map.entry("studio_id", "studio"), Map.entry("lane_id", "lane"),
            Map.entry("player_id", "player"), Map.entry("winner_id", "player"), Map.entry("merged_into", "player"),
            Map.entry("of_player", "player"), Map.entry("journal_id", "journal"), Map.entry("run_id", "run"),
            Map.entry("duel_id", "duel"), Map.entry("attempt_id", "attempt"));
    private static final Set<String> TIMES = Set.of("at_ms", "started_ms", "ended_ms", "seen_ms", "created_ms", "forgotten_ms",
            "began_ms", "withdrawn_ms");

    private final Connection connection;
    private final Map<String, Long> sizes = new LinkedHashMap<>();
    private final List<String> tables;

    /** @param tables in an order in which none refers to a later one */
    Copying(Connection connection, List<String> tables) throws SQLException {
        this.connection = connection;
        this.tables = tables;
        for (String table : tables) {
            if (columns(table).contains("id")) {
                sizes.put(table, GrowBench.number(connection, "SELECT coalesce(max(id), 0) FROM " + table));
            }
        }
    }

    /** @param studio 0 is the first one's own; {@code year} 0 is the latest */
    void write(int copy, int studio, int year) throws SQLException {
        for (String table : tables) {
            if (!OF_A_STUDIO.contains(table) || year == 0) {
                table(table, copy, studio, year);
            }
        }
    }

    private void table(String table, int copy, int studio, int year) throws SQLException {
        List<String> columns = columns(table);
        List<String> values = columns.stream().map(column -> value(table, column, copy, studio, year)).toList();
        try (Statement statement = connection.createStatement()) {
            statement.execute("INSERT INTO " + table + " (" + String.join(", ", columns) + ") SELECT " + String.join(", ", values)
                    + " FROM " + table + " WHERE " + first(table));
        }
    }

    /** The rows that were there before any copy. */
    private String first(String table) {
        return sizes.containsKey(table) ? "id <= " + sizes.get(table)
                : "journal_id <= " + sizes.get("journal");
    }

    private String value(String table, String column, int copy, int studio, int year) {
        if (column.equals("id")) {
            return shifted(column, table, copy, studio);
        }
        if (REFERS_TO.containsKey(column)) {
            return shifted(column, REFERS_TO.get(column), copy, studio);
        }
        if (TIMES.contains(column)) {
            return column + " - " + year * YEAR_MS;
        }
        if (table.equals("amendment") && Set.of("was", "became").contains(column)) {
            return "CASE WHEN what = 'reassigned' THEN CAST(" + shifted("CAST(" + column + " AS INTEGER)", "player", copy, studio)
                    + " AS TEXT) ELSE " + column + " END";
        }
        return switch (table + "." + column) {
            case "journal.imported_to" -> "stored";
            case "journal.name" -> "name || '-" + copy + "'";
            case "studio.name" -> "name || '-" + studio + "'";
            case "player.name", "player.name_key" -> column + " || ' " + studio + "'";
            default -> column;
        };
    }

    private String shifted(String column, String table, int copy, int studio) {
        return column + " + " + sizes.get(table) * (OF_A_STUDIO.contains(table) ? studio : copy);
    }

    private List<String> columns(String table) throws SQLException {
        List<String> names = new ArrayList<>();
        try (Statement statement = connection.createStatement()) {
            ResultSetMetaData found = statement.executeQuery("SELECT * FROM " + table + " WHERE 1 = 0").getMetaData();
            for (int i = 1; i <= found.getColumnCount(); i++) {
                names.add(found.getColumnName(i));
            }
        }
        return names;
    }
}
