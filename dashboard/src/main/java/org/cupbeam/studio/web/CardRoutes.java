package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.studio.insight.card.Aim;
import org.cupbeam.studio.insight.card.BreakCard;
import org.cupbeam.studio.insight.card.Line;
import org.cupbeam.studio.insight.card.Way;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.sheet.Sheet;
import org.cupbeam.studio.usage.StudioTime;
import org.hipparchus.exception.MathRuntimeException;

/** The card for the wall: where to aim, and how fast, from each station. Staff print it; it holds nothing of players. */
final class CardRoutes implements Routes {
    static final int STATIONS_MAX = 12;
    private static final int PIECES = 20;
    private static final List<String> COLUMNS = List.of("station_mm", "aim_left_mm", "start_mm_s", "level_roll_mm",
            "at_hole_mm_s", "past_mm", "effective_width_mm", "to_hole_s", "to_rest_s");

    /** @param day on which it is made, by the studio's clock */
    private record Said(String day, double stimpFt, double uphillPercent, double sidePercent, double pastMm, List<Row> rows) {
    }

    /** Lengths in mm and speeds in mm/s, to a tenth; the way as pairs of along and left. */
    private record Row(double distanceMm, double besideMm, double startMmS, double levelRollMm, double atHoleMmS,
                       double entryDeg, double effectiveWidthMm, double share, double toHoleS, double toRestS,
                       List<double[]> way, List<double[]> past, String words) {
    }

    private record Made(BreakCard card, List<Way> ways) {
    }

    private final Store store;
    private final Clock clock;

    /** @param clock also gives the time zone where the studio's is not set */
    CardRoutes(Store store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/card", Page.of("card.html"));
        routes.get("/api/card", this::card);
        routes.get("/api/card/export", this::export);
    }

    private void card(Context ctx) {
        Made made = made(ctx);
        Line line = made.card().line();
        List<String> words = made.card().inWords("feet".equals(ctx.queryParam("units")) ? Units.FEET : Units.METRIC);
        Json.send(ctx, new Said(today(), line.stimpFt(), line.uphillPercent(), line.sidePercent(), made.card().pastMm(),
                IntStream.range(0, words.size()).mapToObj(i -> row(line, made.card().rows().get(i), made.ways().get(i),
                        words.get(i))).toList()));
    }

    private void export(Context ctx) {
        Made made = made(ctx);
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < made.ways().size(); i++) {
            Aim aim = made.card().rows().get(i);
            Way way = made.ways().get(i);
            rows.add(List.of(tenth(aim.distanceMm()), tenth(aim.besideMm()), tenth(aim.startMmPerS()),
                    tenth(aim.levelRollMm(made.card().line().stimpFt())), tenth(aim.atHoleMmPerS()), tenth(aim.pastMm()),
                    tenth(aim.effectiveWidthMm()), hundredth(way.toHoleS()), hundredth(way.toRestS())));
        }
        Download.send(ctx, "card", List.of(new Sheet("card", COLUMNS, rows)));
    }

    private String today() {
        return LocalDate.now(clock.withZone(store.read(h -> StudioTime.of(h, clock.getZone()).zone()))).toString();
    }

    private static Row row(Line line, Aim aim, Way way, String words) {
        return new Row(tenth(aim.distanceMm()), tenth(aim.besideMm()), tenth(aim.startMmPerS()),
                tenth(aim.levelRollMm(line.stimpFt())), tenth(aim.atHoleMmPerS()), tenth(Math.toDegrees(aim.entryRad())),
                tenth(aim.effectiveWidthMm()), hundredth(aim.share()), hundredth(way.toHoleS()),
                hundredth(way.toRestS()), places(way.toHole()), places(way.past()), words);
    }

    private static List<double[]> places(List<Way.Place> places) {
        return places.stream().map(each -> new double[] {tenth(each.alongMm()), tenth(each.leftMm())}).toList();
    }

    private static Made made(Context ctx) {
        Line line = new Line(number(ctx, "stimp_ft", 3, 20), number(ctx, "uphill_percent", -10, 10),
                number(ctx, "side_percent", -10, 10));
        double pastMm = number(ctx, "past_mm", 10, 3000);
        List<Double> stationsMm = stations(ctx.queryParam("stations_mm"));
        try {
            BreakCard card = BreakCard.of(line, pastMm, stationsMm);
            return new Made(card, card.rows().stream().map(aim -> Way.of(line, aim, PIECES)).toList());
        } catch (IllegalArgumentException | MathRuntimeException e) { // no ball stops there, or no aim is found
            throw Refusal.badRequest("On that slope a ball set off from there does not stop so near. "
                    + "Make the slope less, the green slower, or the pace softer.");
        }
    }

    private static List<Double> stations(String textOrNull) {
        String[] parts = textOrNull == null ? new String[0] : textOrNull.split(",", STATIONS_MAX + 2);
        if (parts.length == 0 || parts.length > STATIONS_MAX) {
            throw Refusal.badRequest("Give one to " + STATIONS_MAX + " stations; more do not fit on a card.");
        }
        return Arrays.stream(parts).map(each -> inRange("stations_mm", each, 100, 30_000)).sorted().distinct().toList();
    }

    private static double number(Context ctx, String name, double low, double high) {
        return inRange(name, ctx.queryParam(name), low, high);
    }

    private static double inRange(String name, String textOrNull, double low, double high) {
        try {
            double value = Double.parseDouble(String.valueOf(textOrNull));
            if (value >= low && value <= high) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Told below.
        }
        throw Refusal.badRequest("Give " + name + " as a number from " + low + " to " + high + ".");
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }

    private static double hundredth(double value) {
        return Math.round(value * 100) / 100.0;
    }
}
