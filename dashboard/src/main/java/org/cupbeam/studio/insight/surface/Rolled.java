package org.cupbeam.studio.insight.surface;

import java.util.List;

/**
 * Balls that rolled through all beams of a lane, as the beams saw them.
 *
 * @param beams in order along the line
 * @param balls in the order in which they rolled
 */
public record Rolled(List<Beam> beams, List<Ball> balls) {

    public Rolled {
        beams = List.copyOf(beams);
        balls = List.copyOf(balls);
    }

    /**
     * A beam, as the rig file has it.
     *
     * @param chordMm how much of a ball's way it sees
     */
    public record Beam(double positionMm, double chordMm) {
    }

    /** One ball. @param toward as putts go; else back */
    public record Ball(boolean toward, List<Crossing> crossings) {
        public Ball {
            crossings = List.copyOf(crossings);
        }
    }

    /**
     * A beam crossed.
     *
     * @param beam by its place among the beams
     * @param onS  when the ball reached it, since some time of the ball's own
     * @param offS when it left it, later than that
     */
    public record Crossing(int beam, double onS, double offS) {
    }
}
