package org.cupbeam.studio.store.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * Somebody's words on a player, a run or one putt; exactly one of the three is not null.
 *
 * @param player  the player's number
 * @param run     the run's
 * @param attempt the attempt's
 * @param atMs    when it was written, ms since 1970
 */
public record NoteRow(int id, Integer player, Integer run, Integer attempt, String author, String words, long atMs) {
    static final String SELECT = "SELECT n.id, n.player_id, n.run_id, n.attempt_id, n.author, n.words, n.at_ms FROM note n "
            + "WHERE n.withdrawn_ms IS NULL AND ";

    static NoteRow read(ResultSet row) throws SQLException {
        Columns in = new Columns(row);
        return new NoteRow(in.whole(), in.wholeOrNull(), in.wholeOrNull(), in.wholeOrNull(), in.text(), in.text(),
                in.large());
    }
}
