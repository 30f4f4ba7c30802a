package org.cupbeam.studio.bench;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Locale;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.upkeep.Rebuilt;

/**
 * Grows a filled store fast, for measuring it at size: its rows are written again with other numbers, names and times, and
 * never went through the ingest. Copies go to more studios first, each with lanes and players of its own, and then further into
 * the past, by 53 weeks each, with the same lanes and players. Events are not copied, since no page asks for them and they are
 * two thirds of the bytes: the copies are as an import leaves them.
 *
 * <p>Not for a store that anybody needs: indexes are dropped and made anew, and nothing is synced meanwhile.
 *
 * <p>Arguments: the JDBC URL of a store that was filled once and not grown yet; how large it is to be, as a multiple; over how
 * many studios.
 */
public final class GrowBench {
    private static final List<String> TABLES = List.of("studio", "lane", "journal", "player", "duel", "run", "attempt", "correction",
            "note", "amendment", "fault");

    private GrowBench() {
    }

    public static void main(String[] args) throws SQLException {
        int copies = Integer.parseInt(args[1]);
        int studios = Integer.parseInt(args[2]);
        long began = System.nanoTime();
        try (Connection connection = DriverManager.getConnection(Database.at(args[0]).url())) {
            boolean sqlite = args[0].startsWith("jdbc:sqlite:");
            Bare bare = sqlite ? new Bare.OfSqlite(connection) : new Bare.OfPostgres(connection);
            if (number(connection, "SELECT count(*) FROM journal WHERE imported_to > 0") > 0) {
                throw new IllegalStateException("it was grown before: begin with one that was filled once");
            }
            bare.begin(TABLES);
            Copying copying = new Copying(connection, TABLES);
            for (int copy = 1; copy < copies; copy++) {
                copying.write(copy, copy % studios, copy / studios);
                say("copy %d of %d after %.0f s", copy, copies - 1, (System.nanoTime() - began) / 1e9);
            }
            bare.end();
        }
        for (Rebuilt each : Rebuilt.all(Database.at(args[0]))) {
            say("%,d %s after %.0f s", each.rows(), each.what(), (System.nanoTime() - began) / 1e9);
        }
        try (Connection connection = DriverManager.getConnection(Database.at(args[0]).url())) {
            say("%,d attempts after %.0f s", number(connection, "SELECT count(*) FROM attempt"), (System.nanoTime() - began) / 1e9);
        }
    }

    static long number(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    static void say(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }
}
