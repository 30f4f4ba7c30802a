package org.cupbeam.studio.sim;

import java.util.List;
import org.cupbeam.drill.Drill;

/** What somebody at the lane, or at the studio's page, does. */
sealed interface Deed {
    /** Done with a ball or a foot, at the lane; nobody answers. */
    sealed interface AtTheLane extends Deed {
    }

    /** Asked of the lane by the host, and answered. */
    sealed interface Asked extends Deed {
    }

    /** A ball drops. */
    record Hole() implements AtTheLane {
    }

    /** The pedal says that a ball missed, unseen. */
    record Miss() implements AtTheLane {
    }

    /** The pedal takes the last attempt back. */
    record TakeBack() implements AtTheLane {
    }

    /** A miss is entered, with its finish. */
    record Entered(double finishMm) implements Asked {
    }

    /** A drill begins. */
    record Start(Drill drill, List<String> players) implements Asked {
    }

    record TakeBackAsked() implements Asked {
    }

    record Pass() implements Asked {
    }

    record End() implements Asked {
    }

    /** The how-manieth attempt ever, from 0, counts no longer in the record. */
    record Void(int attempt) implements Asked {
    }
}
