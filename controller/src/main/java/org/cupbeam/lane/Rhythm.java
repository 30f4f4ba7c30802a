package org.cupbeam.lane;

import org.cupbeam.lane.Lamp.State;

/**
 * How one lamp of one colour tells its states apart, across a room and for whoever sees no colours: by rhythm.
 *
 * <pre>
 *   ready      steady light
 *   ball seen  dark, for as long as a ball is in a beam
 *   holed      quick, even:           # . # . # . # .
 *   overshoot  long, with short gaps: ### . ### . ###
 *   fault      a short flash a second: . . . . # . . .
 * </pre>
 */
final class Rhythm {
    /** How often the lamp may change, and what a sign above stands for. */
    static final long BEAT_NS = 120_000_000;

    private Rhythm() {
    }

    /** Whether the lamp is lit so long after it began to show a state. */
    static boolean isLit(State state, long sinceNs) {
        long beat = sinceNs / BEAT_NS;
        return switch (state) {
            case READY -> true;
            case BALL_SEEN -> false;
            case HOLED -> beat % 2 == 0;
            case OVERSHOOT -> beat % 4 != 3;
            case FAULT -> beat % 8 == 0;
        };
    }

    /** Whether the state is shown by a change of light, so that the lamp must be looked after. */
    static boolean changes(State state) {
        return switch (state) {
            case READY, BALL_SEEN -> false;
            case HOLED, OVERSHOOT, FAULT -> true;
        };
    }
}
