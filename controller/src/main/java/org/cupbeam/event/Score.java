package org.cupbeam.event;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Worded;

/**
 * The whole state of play of one lane, small enough to be sent after every putt: a board can be drawn from it alone.
 *
 * @param sequence of the last event that it includes; 0 where there is none
 * @param drill    null where none is set
 * @param limitMm  the overshoot limit in force
 * @param duel     the duel's id; null outside a duel
 * @param winner   the player; null while there is none
 * @param turn     whose turn it is, an index into the players; empty where nobody's
 * @param players  in order of play
 * @param last     the last attempt; null where there is none
 * @param beams    the rig's, in order along the line
 */
public record Score(String studio, String lane, long sequence, State state, Drill drill, double limitMm,
                    Tags tags, String duel, String winner, OptionalInt turn, List<Player> players, Last last,
                    GreenNow green, List<BeamAt> beams, Instant time) {
    /** The most players of a duel. */
    public static final int MAX_PLAYERS = 8;
    /** The most putts listed of one player: the newest. */
    public static final int MAX_PUTTS = 60;
    /** The longest name of a player, in characters. */
    public static final int MAX_NAME = 40;

    public Score {
        players = List.copyOf(players);
        beams = List.copyOf(beams);
    }

    /** Whether anything is played for. */
    public enum State implements Worded { IDLE, PLAYING, OVER }

    /**
     * One player's run.
     *
     * @param run        the run's id; null while it has not begun
     * @param ballsLeft  still to putt in this visit
     * @param ballsInRun left in the run; empty where each station has its own
     * @param meanMissMm NaN where no miss has a finish
     * @param endedBy    null while the run goes on
     * @param putts      the newest, oldest first
     */
    public record Player(String player, String run, int station, double stationMm, int stationsCleared, int attempts,
                         int holed, double meanMissMm, int ballsLeft, OptionalInt ballsInRun, int visit,
                         EndedBy endedBy, List<PuttMade> putts) {
        public Player {
            putts = List.copyOf(putts);
        }
    }

    /** A putt of a run, in short. */
    public record PuttMade(int station, Putt.Outcome outcome, double finishMm, boolean overshoot, Putt.How how) {
    }

    /**
     * The last attempt, whole.
     *
     * @param player    null outside a run; then the station is 0 and its distance NaN
     */
    public record Last(long sequence, String player, int station, double stationMm, Putt putt) {
    }

    /** A beam of the rig, for a picture of the line. */
    public record BeamAt(String name, double positionMm) {
    }
}
