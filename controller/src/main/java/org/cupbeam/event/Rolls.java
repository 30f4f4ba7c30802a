package org.cupbeam.event;

import java.util.List;
import org.cupbeam.drill.Worded;

/**
 * A test of the green that goes on: balls rolled by hand through all beams, as the beams saw them. While it does, the lane
 * counts no putts.
 *
 * @param endsInS until it ends by itself, should nothing more roll; s
 * @param beams   in order along the line
 * @param rolls   the newest, oldest first
 */
public record Rolls(double endsInS, List<Beam> beams, List<Roll> rolls) {
    /** The most beams that are told of. */
    public static final int MAX_BEAMS = 64;
    /** The most rolls that are told of. */
    public static final int MAX_ROLLS = 24;

    public Rolls {
        beams = List.copyOf(beams);
        rolls = List.copyOf(rolls);
    }

    /**
     * A beam as the rig file has it.
     *
     * @param chordMm how much of a ball's way it sees
     */
    public record Beam(String name, double positionMm, double chordMm) {
    }

    /** Which way a ball rolled: as putts go, or back. */
    public enum Way implements Worded { TOWARD, BACK }

    /**
     * One ball.
     *
     * @param number    from 1, in the order in which they rolled since the test began
     * @param crossings in the order in which they came, one a beam
     */
    public record Roll(int number, Way way, List<Crossing> crossings) {
        public Roll {
            crossings = List.copyOf(crossings);
        }
    }

    /**
     * A beam crossed.
     *
     * @param beam  an index into the beams
     * @param onNs  when the ball reached it, ns since it reached its first
     * @param offNs when it left it
     */
    public record Crossing(int beam, long onNs, long offNs) {
    }
}
