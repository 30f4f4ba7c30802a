package org.cupbeam.lane;

import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;

/** Where a lane's word goes: the link, or whatever stands in for it. Called from several threads; never waits. */
interface Outlet {
    /** Events have come to the journal's disk. */
    void written();

    /** The state of play, whose events are on the disk. */
    void score(Score score);

    void health(Health.Report report);

    /** Whatever it says has been done is on the disk. */
    void answer(Answer answer);

    /** Nowhere. */
    Outlet NONE = new Outlet() {
        @Override
        public void written() {
        }

        @Override
        public void score(Score score) {
        }

        @Override
        public void health(Health.Report report) {
        }

        @Override
        public void answer(Answer answer) {
        }
    };
}
