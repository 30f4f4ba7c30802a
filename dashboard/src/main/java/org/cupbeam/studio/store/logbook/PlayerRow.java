package org.cupbeam.studio.store.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.cupbeam.studio.store.Sight;

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
    private static final String SELECT = """
            SELECT p.id, p.name, %s, %s, %s, %s,
                (SELECT coalesce(sum(t.runs), 0) FROM player_tally t WHERE t.player_id = p.id AND %s),
                (SELECT max(t.last_ms) FROM player_tally t WHERE t.player_id = p.id AND %s), p.merged_into, p.name_key
            FROM player p""";

    /** Of one who was elsewhere too, only what was played where it is seen. */
    static String select(Sight sight) {
        String studio = sight.studio("t.studio_id");
        if (sight.isAll()) {
            return SELECT.formatted("p.hand", "p.units", "p.remark", "p.created_ms", studio, studio);
        }
        String whole = sight.whole("p.id");
        return SELECT.formatted(only(whole, "p.hand", "NULL"), only(whole, "p.units", "NULL"), only(whole, "p.remark", "NULL"),
                only(whole, "p.created_ms", "coalesce((SELECT min(t.first_ms) FROM player_tally t WHERE t.player_id = p.id AND " + studio + "), 0)"),
                studio, studio);
    }

    private static String only(String when, String column, String otherwise) {
        return "CASE WHEN " + when + " THEN " + column + " ELSE " + otherwise + " END";
    }

    static PlayerRow read(ResultSet row) throws SQLException {
        Columns in = new Columns(row);
        return new PlayerRow(in.whole(), in.text(), in.text(), in.text(), in.text(), in.large(), in.whole(),
                in.largeOrNull(), in.wholeOrNull());
    }
}
