package org.cupbeam.studio.store;

import org.jdbi.v3.core.Handle;

/**
 * What tells whether a player's putts are still what they were: equal while {@link PlayerPutt#all} says the same. It looks
 * at no putt one by one, which would take as long as to read them; so a correction of anybody's putt changes everybody's.
 *
 * @param putts       of the player, those that no longer count included
 * @param newest      of them, the highest number
 * @param corrections by lanes, of all players
 * @param amendments  by staff, of all players
 * @param clocks      that were set right afterwards: what was added to them
 */
public record PuttsVersion(long putts, long newest, long corrections, long amendments, long clocks) {
    /** Now; to be asked before the putts themselves, so that what comes in between is not taken for known. */
    public static PuttsVersion of(Handle h, int player) {
        return h.select("""
                SELECT (SELECT count(*) FROM attempt WHERE player_id = ?),
                    (SELECT coalesce(max(id), 0) FROM attempt WHERE player_id = ?),
                    (SELECT count(*) FROM correction), (SELECT count(*) FROM amendment),
                    (SELECT CAST(coalesce(sum(wall_ms - monotonic_ns / 1000000), 0) AS BIGINT) FROM boot)
                """, player, player).map((row, ctx) -> new PuttsVersion(row.getLong(1), row.getLong(2), row.getLong(3),
                row.getLong(4), row.getLong(5))).one();
    }
}
