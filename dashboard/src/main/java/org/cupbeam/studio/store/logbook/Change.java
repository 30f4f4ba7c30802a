package org.cupbeam.studio.store.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * Something in the record that was put right afterwards.
 *
 * @param what    {@code taken-back} or {@code voided} at the lane; {@code voided}, {@code restored}, {@code rescored}, {@code not-rescored},
 *                {@code reassigned},
 *                {@code renamed}, {@code merged}, {@code forgotten}, {@code imported} here
 * @param player  whose, where it is about one
 * @param run     likewise
 * @param attempt likewise
 * @param was     before, {@code became} after: names; of a run reassigned the players' numbers; of one
 *                rescored its score, of one not rescored why not
 * @param by      who did it
 * @param reason  why; null where not said
 * @param atMs    when, ms since 1970
 * @param journal the lane's journal and {@code number} the event that says so; journal 0: the number here
 */
public record Change(String what, Integer player, Integer run, Integer attempt, String was, String became, String by,
                     String reason, long atMs, int journal, long number) {
    static Change read(ResultSet row) throws SQLException {
        Columns in = new Columns(row);
        return new Change(in.text(), in.wholeOrNull(), in.wholeOrNull(), in.wholeOrNull(), in.text(), in.text(), in.text(),
                in.text(), in.large(), in.whole(), in.large());
    }
}
