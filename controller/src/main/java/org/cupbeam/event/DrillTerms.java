package org.cupbeam.event;

import java.util.List;

/**
 * A drill as messages carry it, the keys of the drill file one to one. What the terms mean, and whether they make a
 * playable drill, the {@code drill} room says.
 *
 * @param name     its name, at most 80 characters
 * @param stations where to putt from
 * @param balls    how many, and for how long they have to do
 * @param holed    balls to hole in a visit to clear the station
 * @param limitMm  how far past the hole a miss may finish; NaN where the rig's limit holds
 * @param penalty  what an overshoot costs
 * @param turns    how players of a duel take turns; null where not said
 */
public record DrillTerms(String name, Stations stations, Balls balls, int holed, double limitMm, Penalty penalty,
                         Turns turns) {

    /** Where to putt from. */
    public sealed interface Stations {
    }

    /** Stations at one step from each other. */
    public record Ladder(double firstMm, double stepMm, int count) implements Stations {
    }

    /** Stations wherever one likes, in order of play. */
    public record At(List<Double> mm) implements Stations {
        public At {
            mm = List.copyOf(mm);
        }
    }

    /** How many balls, and for how long they have to do. */
    public record Balls(int count, Supply supply) {
    }

    /** How long the balls have to do. */
    public enum Supply { EVERY_STATION, WHOLE_RUN }

    /** What an overshoot costs. */
    public enum Penalty { NONE, LOSE_BALL, BACK_ONE, END_RUN }

    /** How players of a duel take turns. */
    public enum Turns { STATION, BALL }
}
