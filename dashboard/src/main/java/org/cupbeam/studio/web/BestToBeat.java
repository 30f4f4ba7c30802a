package org.cupbeam.studio.web;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.Data;
import org.cupbeam.event.Score;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.store.BestRun;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.usage.StudioTime;

/** Tells each lane's board the best run of the drill that it plays. */
final class BestToBeat {
    private record Game(String studio, Drill drill, Tags tags) {
    }

    /** What a lane's board was told last, as JSON. */
    private record Told(Game game, String json) {
    }

    /** As the page reads it; null where there is none yet. @param day by the studio's clock */
    private record Said(String player, int stationsCleared, int attempts, int holed, Double meanMissMm, String day) {
    }

    private final Store store;
    private final LiveLanes lanes;
    private final Clock clock;
    private final Map<Topics, Told> told = new HashMap<>();
    private final AtomicBoolean changed = new AtomicBoolean();

    /** @param clock gives the time zone where the studio's is not set */
    BestToBeat(Store store, LiveLanes lanes, Clock clock) {
        this.store = store;
        this.lanes = lanes;
        this.clock = clock;
    }

    /** Some run may have become the best one. */
    void kept(List<Arrival> arrivals) {
        boolean maybe = arrivals.stream().anyMatch(a -> a.event() != null
                && (a.event().data() instanceof Data.RunEnded || a.event().data() instanceof Data.Correction));
        if (maybe) {
            mayBeOther();
        }
    }

    /** Some best run may be another now. */
    void mayBeOther() {
        changed.set(true);
    }

    /** Asks the store where something has changed; called from one thread, which may be held up. */
    void look() {
        boolean again = changed.getAndSet(false);
        for (LiveLane lane : lanes.all()) {
            Score score = lane.score();
            Game game = score == null ? null : new Game(lane.topics().studio(), score.drill(), score.tags());
            Told last = told.get(lane.topics());
            boolean sameGame = last != null && last.game().equals(game);
            if (game != null && (again || !sameGame)) {
                byte[] json = Json.bytes(best(game).orElse(null));
                Told now = new Told(game, new String(json, StandardCharsets.UTF_8));
                if (!now.equals(last)) {
                    lane.stream().say("best", json);
                }
                told.put(lane.topics(), now);
            }
        }
    }

    private Optional<Said> best(Game game) {
        if (game.drill() == null) {
            return Optional.empty();
        }
        return store.read(h -> {
            ZoneId zone = StudioTime.of(h, clock.getZone()).zone();
            return BestRun.of(h, game.studio(), game.drill(), game.tags()).map(run -> new Said(run.player(), run.stationsCleared(),
                    run.attempts(), run.holed(), Double.isNaN(run.meanMissMm()) ? null : run.meanMissMm(),
                    Instant.ofEpochMilli(run.endedMs()).atZone(zone).toLocalDate().toString()));
        });
    }
}
