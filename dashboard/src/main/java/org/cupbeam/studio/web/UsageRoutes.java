package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.usage.OpeningHours;
import org.cupbeam.studio.usage.Period;
import org.cupbeam.studio.usage.StudioTime;
import org.cupbeam.studio.usage.UsageReport;
import org.cupbeam.studio.usage.UsageSheets;
import org.jdbi.v3.core.Handle;

/** What the owner asks: a month of the studio's use, and when the studio is open. */
final class UsageRoutes implements Routes {
    private record Hours(String zone, String hours) {
    }

    private record Asked(YearMonth month, StudioTime time, UsageReport report, List<LaneName> lanes) {
    }

    private final Store store;
    private final Clock clock;

    /** @param clock also gives the time zone where the studio's is not set */
    UsageRoutes(Store store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/usage", Page.of("usage.html"));
        routes.get("/api/usage", this::month);
        routes.get("/api/usage/export", this::export);
        routes.put("/api/usage/hours", this::setHours);
    }

    private void month(Context ctx) {
        Asked asked = ask(ctx);
        Json.send(ctx, UsageSaid.of(asked.month(), YearMonth.now(clock.withZone(asked.time().zone())), asked.time(),
                asked.report(), asked.lanes()));
    }

    private void export(Context ctx) {
        Asked asked = ask(ctx);
        Download.send(ctx, "usage-" + asked.month(), UsageSheets.of(asked.report()));
    }

    private void setHours(Context ctx) {
        Hours given = Json.read(ctx, Hours.class);
        if (given.zone() == null || given.hours() == null) {
            throw Refusal.badRequest("Give a time zone and the opening hours.");
        }
        try {
            StudioTime time = new StudioTime(StudioTime.zone(given.zone().strip()), OpeningHours.parse(given.hours()));
            store.writing(h -> time.set(h, clock.millis()));
            Json.send(ctx, new Hours(time.zone().getId(), time.hours().text()));
        } catch (IllegalArgumentException e) {
            throw Refusal.badRequest(e.getMessage());
        }
    }

    /** The month asked for; without one, that of now. */
    private Asked ask(Context ctx) {
        return store.read(h -> {
            StudioTime time = StudioTime.of(h, clock.getZone());
            YearMonth month = month(ctx.queryParam("month"), time.zone());
            Sight sight = Access.sight(h, ctx.req());
            return new Asked(month, time, report(h, sight, month, time), LaneName.all(h, sight));
        });
    }

    private UsageReport report(Handle h, Sight sight, YearMonth month, StudioTime time) {
        return UsageReport.of(h, sight, Period.month(month, time.zone()), time.hours(), clock.millis());
    }

    private YearMonth month(String textOrNull, ZoneId zone) {
        if (textOrNull == null) {
            return YearMonth.now(clock.withZone(zone));
        }
        try {
            YearMonth month = YearMonth.parse(textOrNull);
            if (month.getYear() >= 1970 && month.getYear() <= 9998) {
                return month;
            }
        } catch (DateTimeException e) {
            // Told below.
        }
        throw Refusal.badRequest("Give a month as 2026-11.");
    }
}
