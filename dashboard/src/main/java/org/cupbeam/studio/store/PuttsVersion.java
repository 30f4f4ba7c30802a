package org.cupbeam.studio.store;

import org.jdbi.v3.core.Handle;

/**
 * What tells whether a player's putts are still what they were: equal while {@link PlayerPutt#all} says the same. Whoever
 * writes to putts says so here, within the same transaction; to count or sum the putts would take as long as to read them.
 *
 * @param changes of the player's putts until now
 */
public record PuttsVersion(long changes) {
    /**
     * Now; to be asked before the putts themselves, so that what comes in between is not taken for known. Of nobody it is
     * always the same.
     */
    public static PuttsVersion of(Handle h, int player) {
        return h.select("SELECT putts_changed FROM player WHERE id = ?", player).mapTo(Long.class).findOne()
                .map(PuttsVersion::new).orElse(new PuttsVersion(0));
    }

    /** A player has other putts than before. */
    static void changed(Handle h, int player) {
        changed(h, "= ?", player);
    }

    /** Something of one attempt is other than before. */
    static void changedIn(Handle h, int attempt) {
        changed(h, "= (SELECT player_id FROM attempt WHERE id = ?)", attempt);
    }

    /** Something of a journal's attempts is other than before; both ends included. */
    static void changedBetween(Handle h, int journal, long fromSequence, long toSequence) {
        changed(h, "IN (SELECT player_id FROM attempt WHERE journal_id = ? AND sequence BETWEEN ? AND ?)", journal,
                fromSequence, toSequence);
    }

    private static void changed(Handle h, String whose, Object... values) {
        h.execute("UPDATE player SET putts_changed = putts_changed + 1 WHERE id " + whose, values);
    }
}
