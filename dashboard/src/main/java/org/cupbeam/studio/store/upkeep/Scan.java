package org.cupbeam.studio.store.upkeep;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalLong;

/**
 * Reads a table of a damaged file as far as SQLite gets: row after row in the order of their numbers, and, past what it cannot
 * read, number by number until it gets on again.
 */
final class Scan {
    /** How many numbers in a row are tried in vain where nobody knows the last one: more than a damaged inner page leads to. */
    private static final int MOST_IN_VAIN = 20_000;

    /** Is given each row's values, in the order of the columns asked for. */
    interface Taker {
        void row(Object[] values) throws SQLException;
    }

    private final Connection from;
    private final String select;
    private final String table;
    private final int columns;
    private final Taker taker;
    private long last;

    Scan(Connection from, String table, List<String> columns, Taker taker) {
        this.from = from;
        this.table = table;
        this.columns = columns.size();
        this.taker = taker;
        this.select = "SELECT rowid, " + String.join(", ", columns) + " FROM " + table + " NOT INDEXED WHERE rowid ";
    }

    /** @return whether nothing stood in the way, as far as SQLite can tell */
    boolean read() throws SQLException {
        if (!isThere()) {
            return false;
        }
        OptionalLong end = end();
        for (boolean whole = true; ; whole = false) {
            try {
                forward();
                return whole;
            } catch (Unreadable damage) {
                if (!findNext(end)) {
                    return false;
                }
            }
        }
    }

    /** Whether SQLite knows the table at all. */
    private boolean isThere() {
        try (PreparedStatement is = from.prepareStatement(select + "= 0")) {
            return is.getMetaData().getColumnCount() > 0;
        } catch (SQLException no) {
            return false;
        }
    }

    private OptionalLong end() {
        try (PreparedStatement ask = from.prepareStatement("SELECT max(rowid) FROM " + table); ResultSet answer = ask.executeQuery()) {
            return answer.next() ? OptionalLong.of(answer.getLong(1)) : OptionalLong.empty();
        } catch (SQLException unknown) {
            return OptionalLong.empty();
        }
    }

    private void forward() throws SQLException, Unreadable {
        try (PreparedStatement ask = from.prepareStatement(select + "> ? ORDER BY rowid")) {
            ask.setLong(1, last);
            try (ResultSet rows = executed(ask)) {
                while (next(rows)) {
                    take(rows);
                }
            }
        }
    }

    /** Goes on to the next row that can be read, and takes it. @return false where there is none */
    private boolean findNext(OptionalLong end) throws SQLException {
        long vain = 0;
        for (long number = last + 1; end.isPresent() ? number <= end.getAsLong() && vain < 100L * MOST_IN_VAIN : vain < MOST_IN_VAIN;
                number++) {
            try (PreparedStatement ask = from.prepareStatement(select + "= ?")) {
                ask.setLong(1, number);
                try (ResultSet row = executed(ask)) {
                    if (next(row)) {
                        take(row);
                        return true;
                    }
                }
            } catch (Unreadable stillDamaged) {
                vain++;
                continue;
            }
            vain++;
        }
        return false;
    }

    private void take(ResultSet row) throws SQLException, Unreadable {
        Object[] values = new Object[columns];
        long number;
        try {
            number = row.getLong(1);
            for (int i = 0; i < columns; i++) {
                values[i] = row.getObject(i + 2);
            }
        } catch (SQLException e) {
            throw new Unreadable(e);
        }
        if (number <= last) {
            throw new Unreadable(null); // pages in a circle
        }
        last = number;
        taker.row(values);
    }

    private static ResultSet executed(PreparedStatement ask) throws Unreadable {
        try {
            return ask.executeQuery();
        } catch (SQLException e) {
            throw new Unreadable(e);
        }
    }

    private static boolean next(ResultSet rows) throws Unreadable {
        try {
            return rows.next();
        } catch (SQLException e) {
            throw new Unreadable(e);
        }
    }

    /** The damaged file's doing, and not that of what is being made. */
    private static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;

        Unreadable(SQLException cause) {
            super(cause);
        }
    }
}
