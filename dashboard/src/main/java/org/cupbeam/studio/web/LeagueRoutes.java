package org.cupbeam.studio.web;

import com.fasterxml.jackson.annotation.JsonRawValue;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.DrillJson;
import org.cupbeam.studio.league.Weeks;
import org.cupbeam.studio.store.Shelf;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.league.LeagueBook;
import org.cupbeam.studio.store.league.LeagueBook.Kept;
import org.cupbeam.studio.store.league.Played;
import org.cupbeam.studio.store.sheet.Sheet;
import org.cupbeam.studio.usage.StudioTime;
import org.jdbi.v3.core.Handle;

/**
 * Leagues: opened, changed, and their tables, worked out of the record. Whoever looks after some studios sees, and
 * opens, those that are over studios of theirs alone.
 */
final class LeagueRoutes implements Routes {
    private record Changed(Integer version, String name, String last) {
    }

    private record Listed(String zone, String today, List<LeagueSaid.Head> leagues) {
    }

    private record Choices(String zone, String today, List<Choice> drills, List<String> studios) {
    }

    private record Choice(@JsonRawValue String drill) {
        static Choice of(Drill drill) {
            return new Choice(DrillJson.text(drill));
        }
    }

    private final Store store;
    private final LeagueSaid said;
    private final Clock clock;

    /** @param clock also gives the time zone where the studio's is not set */
    LeagueRoutes(Store store, LiveLanes lanes, Clock clock) {
        this.store = store;
        this.said = new LeagueSaid(lanes, clock);
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/leagues", Page.of("leagues.html"));
        routes.get("/league/{id}", Page.of("league.html"));
        routes.get("/api/leagues", this::list);
        routes.get("/api/leagues/choices", this::choices);
        routes.post("/api/leagues", this::open);
        routes.get("/api/league/{id}", this::one);
        routes.get("/api/league/{id}/export", this::export);
        routes.put("/api/league/{id}", this::change);
        routes.delete("/api/league/{id}", this::takeOff);
        routes.post("/api/league/{id}/put-back", this::putBack);
    }

    private void list(Context ctx) {
        Json.send(ctx, store.read(h -> {
            StudioTime time = StudioTime.of(h, clock.getZone());
            return new Listed(time.zone().getId(), today(time), LeagueBook.all(h).stream().filter(each -> isTheirs(ctx, each)).map(said::head).toList());
        }));
    }

    private void choices(Context ctx) {
        Json.send(ctx, store.read(h -> {
            StudioTime time = StudioTime.of(h, clock.getZone());
            List<Choice> drills = new ArrayList<>(DrillFile.presets().stream().map(DrillFile::preset).map(Choice::of).toList());
            Shelf.all(h, Access.scope(ctx.req())).forEach(each -> drills.add(Choice.of(each.drill())));
            return new Choices(time.zone().getId(), today(time), drills, LeagueBook.studios(h).stream().filter(Access.scope(ctx.req())::includes).toList());
        }));
    }

    private void open(Context ctx) {
        LeagueAsked asked = Json.read(ctx, LeagueAsked.class);
        if (!Access.scope(ctx.req()).includesAll(asked.studios() == null ? Set.of() : new HashSet<>(asked.studios()))) {
            throw Refusal.badRequest("Choose studios of your own, each by its name.");
        }
        String who = Access.who(ctx.req());
        Json.send(ctx, said.head(checked(() -> store.write(h -> LeagueBook.open(h, asked.league(StudioTime.of(h, clock.getZone()).zone()),
                who, clock.millis())))));
    }

    private void one(Context ctx) {
        Json.send(ctx, store.read(h -> said.whole(h, kept(h, ctx), ctx.queryParam("week"))));
    }

    private void export(Context ctx) {
        Kept kept = store.read(h -> kept(h, ctx));
        Weeks weeks = Weeks.of(kept.league());
        List<Sheet> sheets = store.read(h -> said.sheets(h, kept, week -> store.read(other -> Played.in(other, kept.league(), weeks.span(week)))));
        Download.send(ctx, "league-" + kept.id() + "-" + kept.league().name(), sheets);
    }

    private void change(Context ctx) {
        Changed sent = Json.read(ctx, Changed.class);
        int id = LogbookFilter.id(ctx);
        if (sent.version() == null) {
            throw Refusal.badRequest("Which version of the league is meant has to be said.");
        }
        LocalDate last = LeagueAsked.day("last", sent.last());
        Json.send(ctx, said.head(checked(() -> store.write(h -> LeagueBook.change(h, id, sent.version(), sent.name(),
                LeagueAsked.weeks(kept(h, ctx).league().firstDay(), last), Access.who(ctx.req()), clock.millis()))).orElseThrow(() ->
                Refusal.conflict("Somebody has changed this league in the meantime. Load the page again."))));
    }

    private void takeOff(Context ctx) {
        int id = LogbookFilter.id(ctx);
        if (!store.write(h -> isTheirs(ctx, kept(h, ctx)) && LeagueBook.takeOff(h, id, clock.millis()))) {
            throw notThere();
        }
        ctx.status(204);
    }

    private void putBack(Context ctx) {
        int id = LogbookFilter.id(ctx);
        store.writing(h -> {
            if (!LeagueBook.putBack(h, id) || LeagueBook.find(h, id).filter(each -> isTheirs(ctx, each)).isEmpty()) {
                throw Refusal.conflict("That league was not taken off."); // and what was done is undone
            }
        });
        Json.send(ctx, said.head(store.read(h -> kept(h, ctx))));
    }

    private static Kept kept(Handle h, Context ctx) {
        return LeagueBook.find(h, LogbookFilter.id(ctx)).filter(each -> isTheirs(ctx, each)).orElseThrow(LeagueRoutes::notThere);
    }

    private static boolean isTheirs(Context ctx, Kept kept) {
        return Access.scope(ctx.req()).includesAll(kept.league().studios());
    }

    private static Refusal notThere() {
        return Refusal.notFound("There is no such league.");
    }

    private String today(StudioTime time) {
        return LocalDate.now(clock.withZone(time.zone())).toString();
    }

    private static <T> T checked(Supplier<T> change) {
        try {
            return change.get();
        } catch (IllegalArgumentException e) {
            throw Refusal.badRequest(e.getMessage());
        }
    }
}
