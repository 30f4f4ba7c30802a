package org.cupbeam.event;

import java.util.List;
import java.util.OptionalLong;
import org.cupbeam.drill.Drill;

/**
 * What the host asks of a lane.
 *
 * @param id     the asker's, at most 64 characters; the same id again is the same command, and acts once
 * @param by     who asks, at most 40 characters
 * @param expect the sequence of the score that the asker saw; the lane refuses when it has moved on since
 * @param ask    what is asked
 */
public record Command(String id, String by, OptionalLong expect, Ask ask) {
    /** The longest id of a command, in characters. */
    public static final int MAX_ID = 64;

    /** What can be asked. */
    public sealed interface Ask {
    }

    /**
     * Begin a drill.
     *
     * @param players 1 to 8, each name at most 40 characters, none twice
     */
    public record Start(Drill drill, List<String> players, Tags tags) implements Ask {
        public Start {
            players = List.copyOf(players);
        }
    }

    /** Take the last attempt of the play back. */
    public record TakeBack() implements Ask {
    }

    /**
     * Enter a miss that no sensor saw.
     *
     * @param finishMm where it finished; NaN: short, unseen
     */
    public record Miss(double finishMm) implements Ask {
    }

    /**
     * An attempt counts no longer in the record; the play stays as it is.
     *
     * @param of the sequence of the attempt's event
     */
    public record Void(long of) implements Ask {
    }

    /** Pass the turn on to the next player. */
    public record Pass() implements Ask {
    }

    /** Stop the run or duel. */
    public record End() implements Ask {
    }

    /**
     * Begin or end a test of the green by balls rolled by hand: while it goes on, no putts are counted.
     *
     * @param on begin, afresh if one goes on already; else end
     */
    public record TestRolls(boolean on) implements Ask {
    }
}
