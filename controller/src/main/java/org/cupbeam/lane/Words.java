package org.cupbeam.lane;

import org.cupbeam.event.Putt;
import org.cupbeam.event.Putt.How;
import org.cupbeam.event.Putt.Outcome;
import org.cupbeam.track.Attempt;

/** The rooms' own words put into the wire's. */
final class Words {
    private Words() {
    }

    static Putt putt(Attempt attempt, boolean overshoot, How how) {
        return new Putt(attempt.holed() ? Outcome.HOLED : Outcome.MISSED, attempt.finishMm(), attempt.finishSdMm(),
                attempt.betweenLowMm(), attempt.betweenHighMm(), overshoot, attempt.speedAtHoleMmPerS(),
                attempt.paceMm(), attempt.rim(), how);
    }
}
