package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.insight.surface.DaySpeed;
import org.cupbeam.studio.insight.surface.Reading;
import org.cupbeam.studio.store.GreenRange;
import org.cupbeam.studio.store.GreenReading;
import org.cupbeam.studio.store.GreenTest;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.sheet.Sheet;
import org.cupbeam.studio.usage.StudioTime;
import org.jdbi.v3.core.Handle;

/** How fast the greens are: now, over a day and over days, and whether that is what the staff want. */
final class GreenRoutes implements Routes {
    private static final int DAYS = 60;

    private final LiveLanes lanes;
    private final Store store;
    private final Clock clock;
    private final GreenWatch watch;

    /** @param clock also gives the time zone where the studio's is not set */
    GreenRoutes(LiveLanes lanes, Store store, Clock clock, GreenWatch watch) {
        this.lanes = lanes;
        this.store = store;
        this.clock = clock;
        this.watch = watch;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/green", Page.of("greens.html"));
        routes.get("/green/{studio}/{lane}", Page.of("green.html"));
        routes.get("/api/green", this::all);
        routes.get("/api/green/{studio}/{lane}", ctx -> Json.send(ctx, lane(ctx)));
        routes.get("/api/green/{studio}/{lane}/export", this::export);
        routes.put("/api/green/{studio}/{lane}/range", this::setRange);
    }

    private void all(Context ctx) {
        Map<Topics, GreenRange> ranges = watch.ranges();
        Json.send(ctx, lanes.heard(Access.scope(ctx.req())).stream().map(lane -> {
            GreenRange range = ranges.get(lane.topics());
            return new GreenSaid.Listed(lane.topics().studio(), lane.topics().lane(),
                    watch.now(lane).map(GreenSaid.Speed::of).orElse(null), uphill(lane), side(lane), GreenSaid.Range.of(range),
                    watch.alert(lane, range));
        }).toList());
    }

    private GreenSaid.Lane lane(Context ctx) {
        Topics topics = topics(ctx);
        Optional<LiveLane> live = lanes.find(topics);
        return store.read(h -> {
            ZoneId zone = StudioTime.of(h, clock.getZone()).zone();
            LocalDate today = LocalDate.now(clock.withZone(zone));
            LocalDate day = day(ctx.queryParam("day"), today);
            Map<LocalDate, List<Reading>> byDay = byDay(h, topics, day, zone);
            List<Reading> readings = new ArrayList<>(byDay.getOrDefault(day, List.of()));
            Optional<Reading> now = day.equals(today) ? live.flatMap(watch::now) : Optional.empty();
            now.ifPresent(readings::add);
            Optional<DaySpeed> speed = DaySpeed.of(readings, zone);
            Optional<GreenRange> range = GreenRange.of(h, topics);
            return new GreenSaid.Lane(topics.studio(), topics.lane(), zone.getId(), day.toString(), today.toString(),
                    startMs(day, zone), startMs(day.plusDays(1), zone), speed.map(DaySpeed::inWords).orElse(null),
                    range.flatMap(r -> speed.flatMap(s -> s.alert(r.lowFt(), r.highFt()))).orElse(null),
                    now.map(GreenSaid.Speed::of).orElse(null), live.map(GreenRoutes::uphill).orElse(null),
                    readings.stream().map(GreenSaid.Speed::of).toList(), speed.map(GreenSaid.Drift::of).orElse(null),
                    days(byDay, zone, range.orElse(null)), GreenSaid.Range.of(range.orElse(null)),
                    GreenTest.last(h, topics).orElse(null));
        });
    }

    private static Map<LocalDate, List<Reading>> byDay(Handle h, Topics topics, LocalDate until, ZoneId zone) {
        Map<LocalDate, List<Reading>> byDay = new TreeMap<>();
        for (GreenReading each : GreenReading.between(h, topics, startMs(until.minusDays(DAYS - 1), zone),
                startMs(until.plusDays(1), zone))) {
            byDay.computeIfAbsent(Instant.ofEpochMilli(each.atMs()).atZone(zone).toLocalDate(), d -> new ArrayList<>())
                    .add(new Reading(each.atMs(), each.stimpFt(), each.sdFt()));
        }
        return byDay;
    }

    private static List<GreenSaid.Day> days(Map<LocalDate, List<Reading>> byDay, ZoneId zone, GreenRange rangeOrNull) {
        List<GreenSaid.Day> days = new ArrayList<>();
        byDay.forEach((day, readings) -> {
            DaySpeed speed = DaySpeed.of(readings, zone).orElseThrow();
            days.add(new GreenSaid.Day(day.toString(), GreenSaid.Speed.of(readings.get(readings.size() - 1)),
                    GreenSaid.Drift.of(speed), rangeOrNull == null ? null
                    : speed.alert(rangeOrNull.lowFt(), rangeOrNull.highFt()).orElse(null)));
        });
        return days;
    }

    private void export(Context ctx) {
        GreenSaid.Lane lane = lane(ctx);
        List<String> speed = List.of("stimp_ft", "low_ft", "high_ft", "sd_ft");
        List<List<Object>> readings = new ArrayList<>();
        lane.readings().forEach(each -> readings.add(List.of(Instant.ofEpochMilli(each.atMs()).toString(), each.ft(),
                each.low(), each.high(), each.sd())));
        List<List<Object>> days = new ArrayList<>();
        for (GreenSaid.Day each : lane.days()) {
            List<Object> row = new ArrayList<>(List.of(each.day(), each.last().ft(), each.last().low(),
                    each.last().high(), each.last().sd()));
            row.add(each.drift() == null ? null : each.drift().ft());
            days.add(row);
        }
        Download.send(ctx, "green-" + lane.lane() + "-" + lane.day(), List.of(
                new Sheet("readings", columns("time", speed, List.of()), readings),
                new Sheet("days", columns("day", speed, List.of("drift_ft")), days)));
    }

    private static List<String> columns(String first, List<String> speed, List<String> more) {
        List<String> all = new ArrayList<>(List.of(first));
        all.addAll(speed);
        all.addAll(more);
        return all;
    }

    /** Both ends, or neither: then the green may be as it likes. */
    private void setRange(Context ctx) {
        GreenSaid.Range given = Json.read(ctx, GreenSaid.Range.class);
        Topics topics = topics(ctx);
        try {
            if (given.lowFt() == null && given.highFt() == null) {
                store.writing(h -> GreenRange.clear(h, topics));
            } else if (given.lowFt() == null || given.highFt() == null) {
                throw Refusal.badRequest("Give both ends of the range, or neither.");
            } else {
                GreenRange range = new GreenRange(given.lowFt(), given.highFt());
                store.writing(h -> range.set(h, topics, clock.millis()));
            }
        } catch (IllegalArgumentException e) {
            throw Refusal.badRequest("That is no range: " + e.getMessage() + ".");
        }
        Json.send(ctx, given);
    }

    static Topics topics(Context ctx) {
        String studio = ctx.pathParam("studio");
        String lane = ctx.pathParam("lane");
        if (Topics.isName(studio) && Topics.isName(lane)) {
            return new Topics(studio, lane);
        }
        throw Refusal.notFound("No lane has such a name: " + Topics.NAME_RULE + ".");
    }

    private static Double uphill(LiveLane lane) {
        return slope(lane, GreenNow::uphillPercent);
    }

    private static Double side(LiveLane lane) {
        return slope(lane, GreenNow::sidePercent);
    }

    private static Double slope(LiveLane lane, ToDoubleFunction<GreenNow> which) {
        double percent = lane.score() == null ? Double.NaN : which.applyAsDouble(lane.score().green());
        return Double.isNaN(percent) ? null : percent;
    }

    private static LocalDate day(String textOrNull, LocalDate today) {
        try {
            LocalDate day = textOrNull == null ? today : LocalDate.parse(textOrNull);
            if (day.getYear() >= 1970 && !day.isAfter(today)) {
                return day;
            }
        } catch (DateTimeException e) {
            // Told below.
        }
        throw Refusal.badRequest("Give a day as 2026-11-25, no later than today.");
    }

    private static long startMs(LocalDate day, ZoneId zone) {
        return day.atStartOfDay(zone).toInstant().toEpochMilli();
    }
}
