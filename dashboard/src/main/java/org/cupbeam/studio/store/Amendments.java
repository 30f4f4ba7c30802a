package org.cupbeam.studio.store;

import java.util.Locale;
import org.cupbeam.studio.store.sums.Whose;
import org.jdbi.v3.core.Handle;

/** The trail of what was changed here: one row for each change, never changed itself, except to forget a name. */
final class Amendments {
    /** What was done. */
    enum What {
        VOIDED, RESTORED, RESCORED, NOT_RESCORED, REASSIGNED, RENAMED, MERGED, FORGOTTEN, IMPORTED;

        String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** What it was done to; null where it is not of that kind. */
    record Target(Integer player, Integer run, Integer attempt) {
        static final Target NOTHING = new Target(null, null, null);

        static Target player(int id) {
            return new Target(id, null, null);
        }

        static Target run(int id) {
            return new Target(null, id, null);
        }

        static Target attempt(int id) {
            return new Target(null, null, id);
        }
    }

    private Amendments() {
    }

    static void note(Handle h, Store store, What what, Target of, String was, String became, Who who) {
        note(h, store.next(h, "amendment"), what, of, was, became, who.name(), who.reason(), who.atMs());
    }

    static void note(Handle h, int id, What what, Target of, String was, String became, String by, String reason, long atMs) {
        h.execute("INSERT INTO amendment (id, what, player_id, run_id, attempt_id, was, became, by_whom, reason, at_ms) "
                        + "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", id, what.word(), of.player(), of.run(), of.attempt(), was,
                became, by, reason, atMs);
        Whose.change(h, id);
    }
}
