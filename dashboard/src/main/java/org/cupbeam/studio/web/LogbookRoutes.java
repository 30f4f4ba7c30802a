package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.logbook.Change;
import org.cupbeam.studio.store.logbook.Drills;
import org.cupbeam.studio.store.logbook.LogFilter;
import org.cupbeam.studio.store.logbook.Notes;
import org.cupbeam.studio.store.logbook.Page;
import org.cupbeam.studio.store.logbook.PlayerRow;
import org.cupbeam.studio.store.logbook.Players;
import org.cupbeam.studio.store.logbook.RunStory;
import org.cupbeam.studio.store.logbook.Runs;
import org.cupbeam.studio.store.logbook.Trail;
import org.cupbeam.studio.usage.StudioTime;
import org.cupbeam.studio.web.access.Right;
import org.cupbeam.studio.web.LogbookSaid.Changed;
import org.cupbeam.studio.web.LogbookSaid.Listed;
import org.cupbeam.studio.web.LogbookSaid.Named;
import org.cupbeam.studio.web.LogbookSaid.Note;
import org.cupbeam.studio.web.LogbookSaid.Player;
import org.cupbeam.studio.web.LogbookSaid.Putt;
import org.cupbeam.studio.web.LogbookSaid.Run;
import org.jdbi.v3.core.Handle;

/** The record, to be looked through: players, runs, a run putt by putt; notes and what was put right for whoever coaches. */
final class LogbookRoutes implements Routes {
    private static final int ROWS = 50;
    private static final int MOST_NOTES = 200;
    private static final int CHOICES = 200;

    private record Lane(int id, String studio, String lane) {
    }

    /** @param more whether there are more players than these: look for them by {@code name} */
    private record Choices(List<Named> players, boolean more, List<String> drills, List<Lane> lanes) {
    }

    /** @param total how many there are in all, on all pages */
    private record Everybody(String zone, List<Player> rows, String next, int total) {
    }

    private record OnePlayer(String zone, Player player, List<Note> notes, List<Changed> trail) {
    }

    private record OneRun(String zone, Run run, List<Run> duel, List<Putt> putts, List<Note> notes, List<Changed> trail) {
    }

    private final Store store;
    private final Clock clock;

    /** @param clock gives the time zone where the studio's is not set */
    LogbookRoutes(Store store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/api/players", this::players);
        routes.get("/api/player/{id}", this::player);
        routes.get("/api/runs", this::runs);
        routes.get("/api/runs/choices", this::choices);
        routes.get("/api/run/{id}", this::run);
        routes.get("/api/report/{id}", this::report);
        routes.get("/api/changes", this::changes);
    }

    /** Who was here last; by name where one is looked for, or where the request says {@code by=name}. */
    private void players(Context ctx) {
        String name = LogbookFilter.text(ctx, "name");
        boolean byName = name != null || "name".equals(ctx.queryParam("by"));
        Json.send(ctx, store.read(h -> {
            Sight sight = Access.sight(h, ctx.req());
            Page<PlayerRow> page = refusing(() -> byName
                    ? Players.byName(h, sight, name == null ? "" : name, LogbookFilter.after(ctx), ROWS)
                    : new Page<>(Players.latest(h, sight, ROWS), null));
            return new Everybody(zone(h).getId(), page.rows().stream().map(Player::of).toList(),
                    page.next() == null ? null : page.next().toString(), Players.count(h, sight, name == null ? "" : name));
        }));
    }

    private void player(Context ctx) {
        int id = LogbookFilter.id(ctx);
        boolean all = Access.may(ctx.req(), Right.COACH);
        Json.send(ctx, store.read(h -> {
            Sight sight = Access.sight(h, ctx.req());
            return new OnePlayer(zone(h).getId(), Player.of(one(h, sight, id)),
                    all ? Notes.ofPlayer(h, sight, id, null, MOST_NOTES).rows().stream().map(Note::of).toList() : List.of(),
                    all ? changed(h, sight, Trail.ofPlayer(h, sight, id)) : List.of());
        }));
    }

    private void runs(Context ctx) {
        Json.send(ctx, store.read(h -> {
            ZoneId zone = zone(h);
            LogFilter filter = LogbookFilter.of(ctx, zone);
            return listed(zone, refusing(() -> Runs.page(h, filter, LogbookFilter.after(ctx),
                    LogbookFilter.limit(ctx, ROWS))), Run::of);
        }));
    }

    private void choices(Context ctx) {
        String name = LogbookFilter.text(ctx, "name");
        Json.send(ctx, store.read(h -> {
            Sight sight = Access.sight(h, ctx.req());
            Page<PlayerRow> page = Players.byName(h, sight, name == null ? "" : name, null, CHOICES);
            return new Choices(page.rows().stream().map(row -> new Named(row.id(), row.name())).toList(), page.next() != null,
                    Drills.names(h, sight), LaneName.all(h, sight).stream().map(row -> new Lane(row.id(), row.studio(), row.lane())).toList());
        }));
    }

    private void run(Context ctx) {
        int id = LogbookFilter.id(ctx);
        boolean all = Access.may(ctx.req(), Right.COACH);
        Json.send(ctx, store.read(h -> {
            RunStory story = RunStory.of(h, id).orElseThrow(() -> Refusal.notFound("There is no such run."));
            List<Note> notes = all ? story.notes().stream().map(Note::of).toList() : List.of();
            List<Changed> trail = all ? changed(h, Access.sight(h, ctx.req()), story.changes()) : List.of();
            return new OneRun(zone(h).getId(), Run.of(story.run()), story.duel().stream().map(Run::of).toList(),
                    story.putts().stream().map(putt -> Putt.of(putt,
                            notes.stream().filter(note -> is(note.attempt(), putt.id())).toList(),
                            trail.stream().filter(each -> is(each.attempt(), putt.id())).toList())).toList(),
                    notes.stream().filter(note -> note.attempt() == null).toList(),
                    trail.stream().filter(each -> each.attempt() == null).toList());
        }));
    }

    private void changes(Context ctx) {
        Json.send(ctx, store.read(h -> {
            Sight sight = Access.sight(h, ctx.req());
            Page<Change> page = refusing(() -> Trail.page(h, sight, LogbookFilter.after(ctx), ROWS));
            return listed(zone(h), new Page<>(changed(h, sight, page.rows()), page.next()), each -> each);
        }));
    }

    private void report(Context ctx) {
        int id = LogbookFilter.id(ctx);
        LocalDate day = LogbookFilter.day(ctx, "day");
        Json.send(ctx, store.read(h -> {
            Sight sight = Access.sight(h, ctx.req());
            return SessionReport.of(h, sight, one(h, sight, id), day, zone(h), clock.instant());
        }));
    }

    /** A place in another list than the one that is asked for makes no sense. */
    private static <T> T refusing(Supplier<T> question) {
        try {
            return question.get();
        } catch (IllegalArgumentException e) {
            throw Refusal.badRequest(e.getMessage());
        }
    }

    private static PlayerRow one(Handle h, Sight sight, int id) {
        return Players.one(h, sight, id).orElseThrow(() -> Refusal.notFound("There is no such player."));
    }

    private ZoneId zone(Handle h) {
        return StudioTime.of(h, clock.getZone()).zone();
    }

    private static <R, T> Listed<T> listed(ZoneId zone, Page<R> page, Function<R, T> said) {
        return new Listed<>(zone.getId(), page.rows().stream().map(said).toList(),
                page.next() == null ? null : page.next().toString());
    }

    private static List<Changed> changed(Handle h, Sight sight, List<Change> changes) {
        Map<Integer, String> names = new HashMap<>();
        IntFunction<String> nameOf = id -> names.computeIfAbsent(id, i -> Players.one(h, sight, i).map(PlayerRow::name).orElse(null));
        return changes.stream().map(change -> Changed.of(change, nameOf)).toList();
    }

    private static boolean is(Integer numberOrNull, int number) {
        return numberOrNull != null && numberOrNull == number;
    }
}
