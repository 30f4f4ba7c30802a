package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.cupbeam.event.Health;
import org.cupbeam.event.Rolls;
import org.cupbeam.event.Topics;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.surface.RollReading;
import org.cupbeam.studio.insight.surface.RollTest;
import org.cupbeam.studio.insight.surface.Rolled;
import org.cupbeam.studio.store.GreenTest;
import org.cupbeam.studio.store.Store;

/** A test of a green by balls rolled both ways: what the lane's beams saw of them, and what that says. */
final class RollRoutes implements Routes {
    private static final String PATH = "/api/green/{studio}/{lane}/test";

    /** A ball. @param ft what it reads by itself, its way's slope included; null where it is left out or seems to gain speed */
    private record Ball(int number, String way, double startMmS, Double slowedMmS2, Double ft, boolean counts) {
    }

    private record Speed(double ft, double low, double high, double uphillPercent, double uphillLow, double uphillHigh,
                         boolean together, String words) {
        static Speed of(RollTest test) {
            Estimate ft = test.stimpFt();
            Estimate up = test.uphillPercent();
            return new Speed(hundredth(ft.value()), hundredth(ft.low()), hundredth(ft.high()), hundredth(up.value()),
                    hundredth(up.low()), hundredth(up.high()), test.together(), test.inWords());
        }
    }

    /**
     * How a test stands.
     *
     * @param more how many more balls each way; null where more would not help
     * @param last the last one that was kept; null where none was
     */
    private record Said(boolean online, boolean on, Double endsInS, List<Ball> rolls, int missingToward, int missingBack,
                        Speed speed, Integer more, String moreWords, GreenTest last) {
    }

    private record Keep(List<Integer> without) {
    }

    private final LiveLanes lanes;
    private final Store store;
    private final InstantSource clock;

    RollRoutes(LiveLanes lanes, Store store, InstantSource clock) {
        this.lanes = lanes;
        this.store = store;
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/green/{studio}/{lane}/test", Page.of("green-test.html"));
        routes.get(PATH, ctx -> Json.send(ctx, said(GreenRoutes.topics(ctx), without(ctx.queryParam("without")))));
        routes.post(PATH + "/keep", this::keep);
    }

    private Said said(Topics topics, Set<Integer> without) {
        Optional<Health> health = lanes.find(topics).map(LiveLane::health);
        Rolls rolls = rolls(health);
        RollReading reading = RollReading.of(rolled(counted(rolls, without)));
        return new Said(health.filter(h -> h.state() == Health.State.ONLINE).isPresent(), rolls != null,
                rolls == null ? null : (double) Math.round(rolls.endsInS()), balls(rolls, reading, without),
                reading.missing(true), reading.missing(false),
                reading.test().map(Speed::of).orElse(null), reading.more().orElse(null),
                reading.test().isPresent() ? reading.moreInWords() : null,
                store.read(h -> GreenTest.last(h, topics)).orElse(null));
    }

    private static Rolls rolls(Optional<Health> health) {
        return health.filter(h -> h.state() == Health.State.ONLINE && h.report() != null).map(h -> h.report().rolls())
                .orElse(null);
    }

    /** Those that are not left out, and whose every beam was crossed once. */
    private static Rolls counted(Rolls rollsOrNull, Set<Integer> without) {
        return rollsOrNull == null ? new Rolls(0, List.of(), List.of()) : new Rolls(rollsOrNull.endsInS(),
                rollsOrNull.beams(), rollsOrNull.rolls().stream().filter(each -> counts(each, rollsOrNull, without)).toList());
    }

    private static Rolled rolled(Rolls rolls) {
        return new Rolled(rolls.beams().stream().map(each -> new Rolled.Beam(each.positionMm(), each.chordMm())).toList(),
                rolls.rolls().stream().map(roll -> new Rolled.Ball(roll.way() == Rolls.Way.TOWARD, roll.crossings().stream()
                        .map(each -> new Rolled.Crossing(each.beam(), each.onNs() * 1e-9, each.offNs() * 1e-9)).toList()))
                        .toList());
    }

    private static boolean counts(Rolls.Roll roll, Rolls rolls, Set<Integer> without) {
        return !without.contains(roll.number()) && rolls.beams().size() > 1
                && roll.crossings().stream().map(Rolls.Crossing::beam).distinct().count() == rolls.beams().size();
    }

    private static List<Ball> balls(Rolls rollsOrNull, RollReading reading, Set<Integer> without) {
        List<Ball> balls = new ArrayList<>();
        int counted = 0;
        for (Rolls.Roll each : rollsOrNull == null ? List.<Rolls.Roll>of() : rollsOrNull.rolls()) {
            boolean counts = counts(each, rollsOrNull, without);
            Double slowed = counts ? reading.slowed().get(counted++) : null;
            Rolls.Crossing first = each.crossings().get(0);
            double start = rollsOrNull.beams().get(first.beam()).chordMm() / ((first.offNs() - first.onNs()) * 1e-9);
            balls.add(new Ball(each.number(), each.way().word(), Math.round(start),
                    slowed == null ? null : Math.round(slowed * 10) / 10.0,
                    slowed == null || !(slowed > 0) ? null : hundredth(GreenSpeed.stimpFt(slowed, 0)), counts));
        }
        return balls;
    }

    private void keep(Context ctx) {
        Keep asked = Json.read(ctx, Keep.class);
        Topics topics = GreenRoutes.topics(ctx);
        Rolls counted = counted(rolls(lanes.find(topics).map(LiveLane::health)),
                asked.without() == null ? Set.of() : Set.copyOf(asked.without()));
        RollTest test = RollReading.of(rolled(counted)).test().orElseThrow(() -> Refusal.conflict(
                "There is nothing to keep yet: three balls each way are needed."));
        Speed speed = Speed.of(test);
        GreenTest kept = new GreenTest(clock.millis(), speed.ft(), speed.low(), speed.high(), speed.uphillPercent(),
                counted.rolls().size(), Access.who(ctx.req()));
        store.writing(h -> kept.keep(h, topics));
        Json.send(ctx, kept);
    }

    private static Set<Integer> without(String textOrNull) {
        if (textOrNull == null || textOrNull.isEmpty()) {
            return Set.of();
        }
        if (!textOrNull.matches("\\d{1,6}(,\\d{1,6}){0,200}")) {
            throw Refusal.badRequest("Say which balls are left out by their numbers, as without=3,5.");
        }
        return Arrays.stream(textOrNull.split(",")).map(Integer::valueOf).collect(Collectors.toSet());
    }

    private static double hundredth(double value) {
        return GreenSaid.hundredth(value);
    }
}
