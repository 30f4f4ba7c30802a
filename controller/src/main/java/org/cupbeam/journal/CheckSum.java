package org.cupbeam.journal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import java.util.zip.CRC32C;

/** By which an event is told from one of which a bit was flipped on the card: CRC-32C (RFC 3720, 12.1). */
final class CheckSum {
    /** How many characters it has. */
    static final int LENGTH = 8;

    private CheckSum() {
    }

    static String of(byte[] payload) {
        CRC32C sum = new CRC32C();
        sum.update(payload);
        return HexFormat.of().toHexDigits((int) sum.getValue());
    }

    /** Whether an event is what it was; of one without a check sum nobody knows better. */
    static boolean holds(byte[] payload, String sumOrNull) {
        return sumOrNull == null || sumOrNull.equals(of(payload));
    }

    /** The first event that is not as it was written, in words; null where each is, as far as it has a check sum. */
    static String firstThatDoesNotHold(Database database) throws SQLException {
        for (String table : new String[] {"event", "left_behind"}) {
            try (Statement select = database.connection().createStatement(); ResultSet rows = select.executeQuery(
                    "SELECT sequence, payload, check_sum FROM " + table + " WHERE check_sum IS NOT NULL")) {
                while (rows.next()) {
                    if (!holds(rows.getBytes(2), rows.getString(3))) {
                        return "event " + rows.getLong(1) + " is not as it was written: it does not have its check sum";
                    }
                }
            }
        }
        return null;
    }

    /** Whether a journal's tables have them yet. */
    static boolean areIn(Database database) throws SQLException {
        return database.number("SELECT count(*) FROM pragma_table_info('event') WHERE name = 'check_sum'") == 1;
    }
}
