package org.cupbeam.studio.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.cupbeam.studio.lease.Pen;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.callback.BaseCallback;
import org.flywaydb.core.api.callback.Context;
import org.flywaydb.core.api.callback.Event;

/**
 * Holds the pen while tables are brought up to date, so that a host of an older version which still runs at them writes nothing in
 * between, and notices afterwards that another has written.
 */
final class UnderThePen extends BaseCallback {
    @Override
    public boolean supports(Event event, Context context) {
        return event == Event.BEFORE_EACH_MIGRATE;
    }

    @Override
    public void handle(Event event, Context context) {
        try (Statement statement = context.getConnection().createStatement()) {
            if (isThere(statement)) {
                statement.execute(Pen.TAKEN_BY_NOBODY);
            }
        } catch (SQLException e) {
            throw new FlywayException("the pen cannot be had: " + e.getMessage(), e);
        }
    }

    /** Databases from before there was one are brought up to date as well. */
    private static boolean isThere(Statement statement) throws SQLException {
        try (ResultSet row = statement.executeQuery("SELECT to_regclass('pen') IS NOT NULL")) {
            return row.next() && row.getBoolean(1);
        }
    }
}
