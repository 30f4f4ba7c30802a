package org.cupbeam.studio.web;

import com.fasterxml.jackson.annotation.JsonRawValue;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.store.GreenRange;

/** How the lanes are: all at a glance, and each with the trial of its sensors. A lane's page lives on its stream. */
final class HealthRoutes implements Routes {
    /**
     * One lane.
     *
     * @param heardAgoS s since it last spoke of its health; null where it never has
     * @param health    as it said it, JSON; null where it never has
     * @param beams     where its beams stand, as far as its score has told
     * @param store     why nothing that it sends can be kept at present, in words; null where it can
     * @param green     that the green is not as fast as the staff want it, in words; null where it is
     */
    private record Seen(String studio, String lane, Double heardAgoS, @JsonRawValue String health,
                        List<Score.BeamAt> beams, String store, String green) {
    }

    private final LiveLanes lanes;
    private final GreenWatch watch;
    private final Supplier<String> trouble;

    /** @param trouble why this host can keep nothing at present, in words; null where it can */
    HealthRoutes(LiveLanes lanes, GreenWatch watch, Supplier<String> trouble) {
        this.lanes = lanes;
        this.watch = watch;
        this.trouble = trouble;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/health", Page.of("health.html"));
        routes.get("/health/{studio}/{lane}", Page.of("rig.html"));
        routes.get("/api/health", this::all);
    }

    private void all(Context ctx) {
        Map<Topics, GreenRange> ranges = watch.ranges();
        String store = trouble.get();
        Json.send(ctx, lanes.heard(Access.scope(ctx.req())).stream()
                .map(lane -> seen(lane, store, watch.alert(lane, ranges.get(lane.topics())))).toList());
    }

    private static Seen seen(LiveLane lane, String store, String green) {
        Health health = lane.health();
        return new Seen(lane.topics().studio(), lane.topics().lane(),
                health == null ? null : Math.round(lane.healthAgoS() * 10) / 10.0,
                health == null ? null : new String(HealthJson.encode(health), StandardCharsets.UTF_8),
                lane.score() == null ? List.of() : lane.score().beams(), store, green);
    }
}
