package org.cupbeam.drill;

import java.util.Optional;

/** One thing that came of a move, for whoever tells of it. */
public sealed interface Happening {
    /**
     * An attempt was taken into account.
     *
     * @param player    who putted
     * @param round     the how-manieth run or duel of the play, from 1
     * @param attempt   the how-manieth of the player's run, from 1
     * @param visit     the how-manieth stay at a station of that run, from 1
     * @param station   putted from, from 1
     * @param stationMm its distance from the hole's centre
     * @param ball      the how-manieth attempt of the visit, from 1
     * @param ballsLeft still to putt in the visit, after the attempt and its penalty, before any move
     * @param holed     it went in
     * @param overshot  it missed beyond the limit
     */
    record Putted(String player, int round, int attempt, int visit, int station, double stationMm, int ball,
                  int ballsLeft, boolean holed, boolean overshot) implements Happening {
    }

    /** A run ended; {@code run} says how it stood then, and why. */
    record RunEnded(String player, int round, Run run) implements Happening {
    }

    /** A duel ended, with the winner where one score was better than all others. */
    record DuelEnded(int round, Optional<String> winner) implements Happening {
    }

    /** The last attempt no longer counts, nor whatever came of it: runs and duels that it ended go on. */
    record TakenBack(Putted putted) implements Happening {
    }

    /** The turn went from one player to another. */
    record Passed(String from, String to) implements Happening {
    }
}
