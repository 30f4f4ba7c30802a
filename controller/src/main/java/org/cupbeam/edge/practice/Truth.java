package org.cupbeam.edge.practice;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/**
 * What truly happened to one putt.
 *
 * @param struckNs         when it was struck
 * @param endedNs          when it lay still, or last moved in the cup's light
 * @param fromMm           distance from the hole's centre
 * @param holed            whether it dropped
 * @param finishMm         where its centre lay at rest, along the line; NaN when holed
 * @param finishSideMm     likewise, to the left of it; NaN when holed
 * @param overshoot        a miss that finished beyond the rig's limit
 * @param visible          whether it blocked a beam, dropped into a fitted cup sensor or was felt by a strike sensor
 * @param speedAtHoleMmPerS speed at the hole's centre had there been no hole; NaN when it would not have got there
 * @param paceMm           where along the line it would have stopped had there been no hole
 * @param rim              it was over the rim and stayed out
 * @param decelMmPerS2     what slowed it along the line as it rolled toward the hole
 * @param traits           what was out of the ordinary
 */
public record Truth(long struckNs, long endedNs, double fromMm, boolean holed, double finishMm, double finishSideMm,
                    boolean overshoot, boolean visible, double speedAtHoleMmPerS, double paceMm, boolean rim,
                    double decelMmPerS2, Set<Trait> traits) {

    public Truth {
        // Not Set.copyOf, whose order differs from run to run.
        EnumSet<Trait> ordered = EnumSet.noneOf(Trait.class);
        ordered.addAll(traits);
        traits = Collections.unmodifiableSet(ordered);
    }

    /** What may be out of the ordinary about a putt. */
    public enum Trait {
        /** Struck before the ball before it lay still. */
        EARLY,
        /** Would have passed the hole's centre with more than 1.4 m/s. */
        FAST,
        /** Would have stopped within a ball's width past the hole's centre. */
        DYING,
        /** Came to rest in a beam, and blocked it until fetched. */
        IN_BEAM,
        /** Lies within a ball's radius of the rim. */
        ON_LIP,
        /** It had fallen into the hole by 10 mm or more, and the far side threw it out again. */
        POPPED_OUT,
        /** The rim threw it over a beam past the hole, which it passed in the air. */
        FLEW_OVER,
        /** The rim sent it back toward the player. */
        SENT_BACK,
        /** The strike sensor did not feel it. */
        UNFELT
    }
}
