package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.cupbeam.commission.Advice;
import org.cupbeam.commission.ArrayEstimate;
import org.cupbeam.commission.Refit;
import org.cupbeam.commission.RolledBeams;
import org.cupbeam.event.Health;
import org.cupbeam.event.Rolls;
import org.cupbeam.event.Score;
import org.cupbeam.green.Ball;

/** Where a lane's beams stand by the balls of a roll test, one beam being measured, and what of it belongs into the rig file. */
final class PlacesRoutes implements Routes {
    private static final String PATH = "/api/health/{studio}/{lane}/places";
    private static final int EACH_WAY = 3;
    private static final double WITHIN_MM = 2;
    private static final double CHORD_MIN_MM = 10;
    private static final long BLOCKED_MAX_NS = 10_000_000_000L;

    /** A beam. @param rigMm by the rig file @param mm by the balls, null before there are any */
    private record Standing(String name, double rigMm, Double mm, Double withinMm) {
    }

    private record Told(double value, double within) {
        static Told of(ArrayEstimate.Value of) {
            return new Told(GreenSaid.hundredth(of.is()), GreenSaid.hundredth(of.within()));
        }
    }

    /**
     * How it stands.
     *
     * @param text    what belongs into the rig file; null before there are balls enough
     * @param limitMm how far past the hole a miss may finish; null where the lane has not said
     * @param advice  what of hole, limit and beams will not do well, in words; null where the lane has not said
     */
    private record Said(boolean online, boolean on, long toward, long back, int eachWay, int measured, double atMm, double withinMm,
                        List<Standing> beams, Told stimpFt, Told uphillPercent, String text, Double limitMm, List<String> advice) {
    }

    /** A lane's rig file, and with other numbers. */
    private record RigFile(String text) {
    }

    /** What is to be told, and what it comes from. @param refit null before there are balls enough */
    private record Looked(Said said, Refit refit) {
    }

    /** A beam that was measured. */
    private record Gauge(int beam, double atMm, double withinMm) {
    }

    private final LiveLanes lanes;

    PlacesRoutes(LiveLanes lanes) {
        this.lanes = lanes;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get(PATH, ctx -> Json.send(ctx, look(ctx).said));
        routes.post(PATH + "/file", this::file);
    }

    /** Changes nothing but the text that was sent. */
    private void file(Context ctx) {
        RigFile sent = Json.read(ctx, RigFile.class);
        Refit refit = look(ctx).refit;
        if (refit == null) {
            throw Refusal.conflict("There is nothing to write yet: " + EACH_WAY + " balls each way are needed.");
        }
        if (sent.text == null || sent.text.isBlank()) {
            throw Refusal.badRequest("Give the lane's rig file.");
        }
        try {
            Json.send(ctx, new RigFile(refit.whole(sent.text)));
        } catch (IllegalArgumentException senseless) {
            throw Refusal.badRequest(senseless.getMessage());
        }
    }

    private Looked look(Context ctx) {
        Optional<LiveLane> lane = lanes.find(GreenRoutes.topics(ctx));
        Optional<Health> health = lane.map(LiveLane::health).filter(each -> each.state() == Health.State.ONLINE);
        Score score = lane.map(LiveLane::score).orElse(null);
        Rolls rolls = health.filter(each -> each.report() != null).map(each -> each.report().rolls()).orElse(null);
        if (rolls == null || rolls.beams().size() < 2) {
            return new Looked(new Said(health.isPresent(), rolls != null, 0, 0, EACH_WAY, 0, 0, WITHIN_MM, List.of(), null, null, null,
                    score == null ? null : score.limitMm(), advice(score, health, null)), null);
        }
        Gauge gauge = gauge(ctx, rolls.beams());
        List<Rolls.Roll> balls = rolls.rolls().stream().filter(each -> counts(each, rolls)).toList();
        long toward = balls.stream().filter(each -> each.way() == Rolls.Way.TOWARD).count();
        ArrayEstimate is = balls.isEmpty() ? null : estimate(rolls.beams(), balls, gauge);
        Refit refit = is != null && is.credible() && toward >= EACH_WAY && balls.size() - toward >= EACH_WAY
                ? new Refit(rolls.beams().stream().map(Rolls.Beam::name).toList(), rolls.beams().stream().map(Rolls.Beam::positionMm).toList(), is)
                : null;
        return new Looked(new Said(true, true, toward, balls.size() - toward, EACH_WAY, gauge.beam, gauge.atMm, gauge.withinMm,
                standing(rolls.beams(), is), refit == null ? null : Told.of(is.stimpFt(0)), refit == null ? null : Told.of(is.uphillPercent()),
                refit == null ? null : refit.part(), score == null ? null : score.limitMm(), advice(score, health, refit)), refit);
    }

    /** Of where the beams stand by the balls; before there are any, by the rig file. */
    private static List<String> advice(Score score, Optional<Health> health, Refit refit) {
        Health.Report report = health.map(Health::report).orElse(null);
        if (score == null || report == null) {
            return null;
        }
        List<Advice.Standing> beams = refit == null ? score.beams().stream().map(each -> new Advice.Standing(each.name(), each.positionMm())).toList()
                : IntStream.range(0, refit.names().size()).mapToObj(i -> new Advice.Standing(refit.names().get(i), refit.is().placesMm().get(i)))
                .sorted(Comparator.comparingDouble(Advice.Standing::positionMm)).toList();
        return Advice.of(score.limitMm(), report.sensors().stream().anyMatch(each -> each.kind() == Health.Sensor.Kind.CUP), beams);
    }

    private static boolean counts(Rolls.Roll roll, Rolls rolls) {
        return roll.crossings().size() == rolls.beams().size()
                && roll.crossings().stream().map(Rolls.Crossing::beam).distinct().count() == rolls.beams().size()
                && roll.crossings().stream().allMatch(each -> each.beam() >= 0 && each.beam() < rolls.beams().size()
                        && each.offNs() > each.onNs() && each.offNs() - each.onNs() < BLOCKED_MAX_NS)
                && rolls.beams().stream().allMatch(each -> each.chordMm() >= CHORD_MIN_MM && each.chordMm() <= Ball.DIAMETER_MM + 1e-6);
    }

    /** The first beam, where the rig file says, unless something else is asked. */
    private static Gauge gauge(Context ctx, List<Rolls.Beam> beams) {
        int beam = (int) number(ctx, "beam", 0, 0, beams.size() - 1.0);
        return new Gauge(beam, number(ctx, "at_mm", beams.get(beam).positionMm(), -20_000, 20_000),
                number(ctx, "within_mm", WITHIN_MM, 0.1, 50));
    }

    private static double number(Context ctx, String key, double otherwise, double least, double most) {
        String text = ctx.queryParam(key);
        if (text == null || text.isBlank()) {
            return otherwise;
        }
        double value = text.matches("-?\\d{1,6}(\\.\\d{1,6})?") ? Double.parseDouble(text) : Double.NaN;
        if (!(value >= least && value <= most)) {
            throw Refusal.badRequest(String.format(Locale.ROOT, "%s is a number from %.1f to %.1f, as -300.5.", key, least, most));
        }
        return value;
    }

    private static ArrayEstimate estimate(List<Rolls.Beam> beams, List<Rolls.Roll> balls, Gauge gauge) {
        try {
            return RolledBeams.estimate(IntStream.range(0, beams.size()).mapToObj(i -> new RolledBeams.Beam(
                    i == gauge.beam ? gauge.atMm : Double.NaN, gauge.withinMm, beams.get(i).chordMm())).toList(),
                    balls.stream().map(ball -> new RolledBeams.Ball(ball.way() == Rolls.Way.TOWARD, ball.crossings().stream()
                            .map(each -> new RolledBeams.Crossing(each.beam(), each.onNs(), each.offNs())).toList())).toList());
        } catch (IllegalArgumentException senseless) { // whatever a lane may send
            return null;
        }
    }

    private static List<Standing> standing(List<Rolls.Beam> beams, ArrayEstimate isOrNull) {
        List<Standing> standing = new ArrayList<>();
        for (int i = 0; i < beams.size(); i++) {
            standing.add(new Standing(beams.get(i).name(), beams.get(i).positionMm(), isOrNull == null ? null : tenth(isOrNull.placesMm().get(i)),
                    isOrNull == null ? null : tenth(1.96 * isOrNull.placeSdsMm().get(i))));
        }
        return standing;
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
