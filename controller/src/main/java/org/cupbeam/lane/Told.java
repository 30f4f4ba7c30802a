package org.cupbeam.lane;

import java.util.List;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Tags;

/** What a lane's play was told. The journal keeps these, and folded one after the other they give the state of play. */
sealed interface Told {
    /** Of the first event that came of it, past those that ended the play before. */
    long sequence();

    /**
     * A play began: nothing of the one before matters any more.
     *
     * @param limitMm the overshoot limit in force, the drill's or the rig's
     */
    record Begun(long sequence, Drill drill, List<String> players, Tags tags, double limitMm) implements Told {
        public Begun {
            players = List.copyOf(players);
        }
    }

    /** A putt was resolved. */
    record Tried(long sequence, Putt putt) implements Told {
    }

    /** The last attempt did not count. */
    record TakenBack(long sequence) implements Told {
    }

    /** It is the next player's turn. */
    record Passed(long sequence) implements Told {
    }

    /** What was in play is over. */
    record Ended(long sequence) implements Told {
    }
}
