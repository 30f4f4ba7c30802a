package org.cupbeam.link;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Topics;

/** What a lane would give its link to say. */
final class Lane {
    static final Topics TOPICS = new Topics("north", "bay-3");
    static final Instant NOW = Instant.parse("2026-11-25T06:00:00Z");

    private Lane() {
    }

    static Health.Report report() {
        return new Health.Report("7f3c9a", "0.1.0", NOW, Stamp.Clock.SYNCHRONISED, 0, 0, List.of(), List.of());
    }

    static Score score(long sequence) {
        return new Score("north", "bay-3", sequence, Score.State.IDLE, null, 914.4, Tags.NONE, null, null,
                OptionalInt.empty(), List.of(), null, new GreenNow(10, 0.1, 0), List.of(), NOW);
    }
}
