package org.cupbeam.studio.web;

import java.util.Optional;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;

/** What the boards show. */
public final class Shown {
    private Shown() {
    }

    public static Optional<Score> score(LiveLanes lanes, Topics topics) {
        return lanes.find(topics).map(LiveLane::score);
    }
}
