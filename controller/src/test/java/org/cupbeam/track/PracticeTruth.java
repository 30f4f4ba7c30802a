package org.cupbeam.track;

import java.util.List;
import org.cupbeam.edge.practice.Evening;
import org.cupbeam.edge.practice.Truth;

/**
 * The truth of a simulated evening, as the grader takes it. A ball that meets the rim at more than 2 m/s leaves the ground:
 * what beams then see of it, if anything, is not a rolling ball's chord.
 */
final class PracticeTruth {
    private static final double THROWN_MM_PER_S = 2000;

    private PracticeTruth() {
    }

    static List<TruePutt> of(Evening evening) {
        return evening.truths().stream().map(t -> new TruePutt(t.struckNs() * 1e-9, t.endedNs() * 1e-9, t.holed(),
                t.finishMm(), t.overshoot(), t.visible(), t.rim(),
                t.traits().contains(Truth.Trait.FLEW_OVER) || t.rim() && t.speedAtHoleMmPerS() > THROWN_MM_PER_S))
                .toList();
    }
}
