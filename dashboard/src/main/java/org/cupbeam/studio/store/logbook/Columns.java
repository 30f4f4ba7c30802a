package org.cupbeam.studio.store.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.Words;

/** One row's columns, taken one after the other. */
final class Columns {
    private final ResultSet row;
    private int at;

    Columns(ResultSet row) {
        this.row = row;
    }

    String text() throws SQLException {
        return row.getString(++at);
    }

    int whole() throws SQLException {
        return row.getInt(++at);
    }

    Integer wholeOrNull() throws SQLException {
        int value = row.getInt(++at);
        return row.wasNull() ? null : value;
    }

    long large() throws SQLException {
        return row.getLong(++at);
    }

    Long largeOrNull() throws SQLException {
        long value = row.getLong(++at);
        return row.wasNull() ? null : value;
    }

    /** NaN for null. */
    double number() throws SQLException {
        double value = row.getDouble(++at);
        return row.wasNull() ? Double.NaN : value;
    }

    boolean flag() throws SQLException {
        return row.getInt(++at) != 0;
    }

    /** The constant for a word; null where there is none, or one that is not known here. */
    <E extends Enum<E> & Worded> E word(Class<E> type) throws SQLException {
        String word = text();
        return word == null ? null : Words.find(type, word);
    }
}
