package org.cupbeam.event;

import java.time.Instant;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Worded;

/** What an event says. */
public sealed interface Data {
    /** When, on the lane's own clock. */
    Stamp stamp();

    /** The event's type, as {@code org.cupbeam.attempt.v1}. */
    String type();

    /** The types of version 1. */
    String ATTEMPT = "org.cupbeam.attempt.v1";
    String RUN = "org.cupbeam.run.v1";
    String CORRECTION = "org.cupbeam.correction.v1";
    String CLOCK = "org.cupbeam.clock.v1";

    /**
     * A putt was resolved.
     *
     * @param play  its place in a run; null outside any
     * @param tags  the run's tags
     * @param green the green at that moment
     */
    record Attempt(Stamp stamp, Putt putt, Play play, Tags tags, GreenNow green) implements Data {
        @Override
        public String type() {
            return ATTEMPT;
        }
    }

    /** Something about a run or a duel. */
    sealed interface Run extends Data {
        @Override
        default String type() {
            return RUN;
        }
    }

    /**
     * Whose run.
     *
     * @param run    the run's id, at most 64 characters
     * @param duel   the duel's id; null outside a duel
     * @param player whose
     * @param order  the player's place in the order of play, from 1
     */
    record Of(String run, String duel, String player, int order) {
    }

    /**
     * A run began.
     *
     * @param limitMm the overshoot limit in force, the drill's or the rig's
     */
    record RunStarted(Stamp stamp, Of of, Drill drill, Tags tags, double limitMm) implements Run {
    }

    /**
     * A run is over.
     *
     * @param meanMissMm mean distance from the hole of the misses that have a finish; NaN where none has
     */
    record RunEnded(Stamp stamp, Of of, int stationsCleared, int attempts, int holed, double meanMissMm,
                    EndedBy endedBy) implements Run {
    }

    /** A player passed the turn on to the next. */
    record RunPassed(Stamp stamp, Of of) implements Run {
    }

    /**
     * A duel is over.
     *
     * @param winner the player; null where nobody won
     */
    record DuelEnded(Stamp stamp, String duel, String winner) implements Run {
    }

    /**
     * An earlier attempt no longer counts.
     *
     * @param what   how it was undone
     * @param of     the sequence of the attempt's event
     * @param by     {@code pedal}, or who asked
     * @param reason why; null where not said
     */
    record Correction(Stamp stamp, What what, long of, String by, String reason) implements Data {
        /** The last attempt of the play taken back, or any attempt voided in the record alone. */
        public enum What implements Worded { TAKEN_BACK, VOIDED }

        @Override
        public String type() {
            return CORRECTION;
        }
    }

    /**
     * The wall clock can be believed from now on: what happened earlier in the same boot happened at
     * {@code wall - (stamp.monotonicNs - its monotonicNs)}.
     */
    record Clock(Stamp stamp, Instant wall) implements Data {
        @Override
        public String type() {
            return CLOCK;
        }
    }

    /** An event of a type that this version does not know: to be kept and counted, not understood. */
    record Other(Stamp stamp, String type) implements Data {
    }
}
