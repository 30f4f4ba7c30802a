package org.cupbeam.studio.store.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.event.Source;
import org.cupbeam.event.Tags;

/**
 * A run in the record.
 *
 * @param id        its number here
 * @param name      what its lane calls it
 * @param duel      the number of its duel; null outside one
 * @param duelName  what the lane calls that
 * @param order     the player's place in the order of play, from 1
 * @param playerId  whose
 * @param player    the name; null once forgotten
 * @param drill     null where its beginning never came; its terms as JSON likewise
 * @param limitMm   beyond which a miss overshot; NaN where not known
 * @param sequence  the number of the event that began it
 * @param startedMs when, ms since 1970
 * @param result    how it ended; null while it goes on
 */
public record RunRow(int id, Source source, int lane, String name, Integer duel, String duelName, int order, int playerId,
                     String player, String drill, String terms, Tags tags, double limitMm, long sequence, long startedMs,
                     Result result) {
    /**
     * How a run ended.
     *
     * @param endedBy    null where the word is not known here
     * @param meanMissMm NaN where no miss has a finish
     * @param won        the duel; null outside one, or where nobody won
     */
    public record Result(long sequence, long endedMs, EndedBy endedBy, int stationsCleared, int attempts, int holed,
                         double meanMissMm, Boolean won) {
    }

    static final String COLUMNS = "r.id, s.name, l.name, j.name, r.lane_id, r.name, r.duel_id, u.name, r.play_order, "
            + "r.player_id, p.name, d.name, d.terms, r.breaks, r.slope, r.limit_mm, r.started_sequence, r.started_ms, "
            + "r.ended_sequence, r.ended_ms, r.ended_by, r.stations_cleared, r.attempts, r.holed, r.mean_miss_mm, "
            + "u.winner_id";
    /** Left joins: nothing but the run itself may decide where to begin. */
    static final String NAMES = " LEFT JOIN player p ON p.id = r.player_id LEFT JOIN drill d ON d.id = r.drill_id "
            + "LEFT JOIN duel u ON u.id = r.duel_id LEFT JOIN journal j ON j.id = r.journal_id "
            + "LEFT JOIN lane l ON l.id = r.lane_id LEFT JOIN studio s ON s.id = l.studio_id ";

    static RunRow read(ResultSet row) throws SQLException {
        Columns in = new Columns(row);
        int id = in.whole();
        Source source = new Source(in.text(), in.text(), in.text());
        RunRow begun = new RunRow(id, source, in.whole(), in.text(), in.wholeOrNull(), in.text(), in.whole(), in.whole(),
                in.text(), in.text(), in.text(), new Tags(in.word(Tags.Break.class), in.word(Tags.Slope.class)),
                in.number(), in.large(), in.large(), null);
        Long ended = in.largeOrNull();
        return ended == null ? begun : begun.with(new Result(ended, in.large(), in.word(EndedBy.class), in.whole(),
                in.whole(), in.whole(), in.number(), won(in.wholeOrNull(), begun.playerId)));
    }

    private RunRow with(Result end) {
        return new RunRow(id, source, lane, name, duel, duelName, order, playerId, player, drill, terms, tags, limitMm,
                sequence, startedMs, end);
    }

    private static Boolean won(Integer winner, int player) {
        return winner == null ? null : winner == player;
    }
}
