package org.cupbeam.studio.store.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * A player in the record.
 *
 * @param name       null once forgotten
 * @param hand       {@code left} or {@code right}; null where not said
 * @param units      {@code metric} or {@code feet}; null where not said
 * @param remark     one line about the player; null where none
 * @param createdMs  since when known, ms since 1970
 * @param runs       how many
 * @param lastMs     when the last one began; null where there is none
 * @param mergedInto the player under whose number the runs are now; null for most
 */
public record PlayerRow(int id, String name, String hand, String units, String remark, long createdMs, int runs,
                        Long lastMs, Integer mergedInto) {
    static final String SELECT = """
            SELECT p.id, p.name, p.hand, p.units, p.remark, p.created_ms,
                (SELECT count(*) FROM run r WHERE r.player_id = p.id),
                (SELECT max(r.started_ms) FROM run r WHERE r.player_id = p.id), p.merged_into, p.name_key
            FROM player p""";

    static PlayerRow read(ResultSet row) throws SQLException {
        Columns in = new Columns(row);
        return new PlayerRow(in.whole(), in.text(), in.text(), in.text(), in.text(), in.large(), in.whole(),
                in.largeOrNull(), in.wholeOrNull());
    }
}
