package org.cupbeam.track;

import java.util.List;
import org.cupbeam.edge.practice.Evening;

/** The truth of a simulated evening, as the grader takes it. */
final class PracticeTruth {
    private PracticeTruth() {
    }

    static List<TruePutt> of(Evening evening) {
        return evening.truths().stream().map(t -> new TruePutt(t.struckNs() * 1e-9, t.endedNs() * 1e-9, t.holed(),
                t.finishMm(), t.overshoot(), t.visible(), t.rim())).toList();
    }
}
