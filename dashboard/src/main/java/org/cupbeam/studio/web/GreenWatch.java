package org.cupbeam.studio.web;

import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.insight.surface.DaySpeed;
import org.cupbeam.studio.insight.surface.Reading;
import org.cupbeam.studio.store.GreenRange;
import org.cupbeam.studio.store.Store;

/** Whether the lanes' greens are as fast as the staff want them: by what each lane holds its green's speed to be now. */
final class GreenWatch {
    private final Store store;
    private final InstantSource clock;

    GreenWatch(Store store, InstantSource clock) {
        this.store = store;
        this.clock = clock;
    }

    /** The ranges that staff have set. */
    Map<Topics, GreenRange> ranges() {
        return store.read(GreenRange::all);
    }

    /** What the lane says of its green now; empty where it has said nothing that can be used. */
    Optional<Reading> now(LiveLane lane) {
        GreenNow green = lane.score() == null ? null : lane.score().green();
        return green == null || !(green.stimpSdFt() > 0) ? Optional.empty()
                : Optional.of(new Reading(clock.millis(), green.stimpFt(), green.stimpSdFt()));
    }

    /** A warning where the green is surely out of its range; null where it is not, or where none is set. */
    String alert(LiveLane lane, GreenRange rangeOrNull) {
        return rangeOrNull == null ? null : now(lane).flatMap(reading -> DaySpeed.of(List.of(reading), ZoneOffset.UTC))
                .flatMap(day -> day.alert(rangeOrNull.lowFt(), rangeOrNull.highFt())).orElse(null);
    }
}
