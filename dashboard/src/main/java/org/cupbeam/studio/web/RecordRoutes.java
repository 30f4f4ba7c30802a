package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.time.Clock;
import java.util.List;
import java.util.NoSuchElementException;
import org.cupbeam.studio.store.NoteBook;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.logbook.PlayerRow;
import org.cupbeam.studio.store.logbook.Players;
import org.jdbi.v3.core.Handle;

/** Changes of the record, each with who made it: players, notes, what counts, whose a run is. */
final class RecordRoutes implements Routes {
    private record About(String name, String hand, String units, String remark) {
    }

    private record Words(String words) {
    }

    private record Reason(String reason) {
    }

    private record Reassignment(String player, String reason) {
    }

    private record Merging(int into) {
    }

    private record Made(int id) {
    }

    /** @param mentions notes on others that still hold the name */
    private record Forgotten(List<Integer> mentions) {
    }

    private record Done(boolean done) {
    }

    private final Store store;
    private final PlayerBook players;
    private final NoteBook notes;
    private final RecordBook record;
    private final Clock clock;

    RecordRoutes(Store store, Clock clock) {
        this.store = store;
        this.players = new PlayerBook(store);
        this.notes = new NoteBook(store);
        this.record = new RecordBook(store);
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.post("/api/players", changing(this::add));
        routes.put("/api/player/{id}", changing(this::describe));
        routes.post("/api/player/{id}/merge", changing(this::merge));
        routes.delete("/api/player/{id}", changing(this::forget));
        routes.post("/api/player/{id}/notes", changing(ctx -> Json.send(ctx,
                new Made(notes.onPlayer(LogbookFilter.id(ctx), words(ctx), Access.scope(ctx.req()), who(ctx, null))))));
        routes.post("/api/run/{id}/notes", changing(ctx -> Json.send(ctx,
                new Made(notes.onRun(LogbookFilter.id(ctx), words(ctx), who(ctx, null))))));
        routes.post("/api/attempt/{id}/notes", changing(ctx -> Json.send(ctx,
                new Made(notes.onAttempt(LogbookFilter.id(ctx), words(ctx), who(ctx, null))))));
        routes.delete("/api/note/{id}", changing(ctx -> {
            notes.withdraw(LogbookFilter.id(ctx), who(ctx, null));
            Json.send(ctx, new Done(true));
        }));
        routes.post("/api/attempt/{id}/void", changing(ctx -> {
            record.voids(LogbookFilter.id(ctx), who(ctx, Json.read(ctx, Reason.class).reason()));
            Json.send(ctx, new Done(true));
        }));
        routes.post("/api/attempt/{id}/restore", changing(ctx -> {
            record.restores(LogbookFilter.id(ctx), who(ctx, Json.read(ctx, Reason.class).reason()));
            Json.send(ctx, new Done(true));
        }));
        routes.post("/api/run/{id}/reassign", changing(this::reassign));
    }

    private void add(Context ctx) {
        About about = Json.read(ctx, About.class);
        int id = players.add(about.name(), Access.scope(ctx.req()), clock.millis());
        if (store.read(h -> Access.sight(h, ctx.req()).seesWhole(h, id))) {
            players.describe(id, about.hand(), about.units(), about.remark());
        }
        Json.send(ctx, new Made(id));
    }

    private void describe(Context ctx) {
        int id = LogbookFilter.id(ctx);
        About about = Json.read(ctx, About.class);
        PlayerRow now = store.read(h -> Players.one(h, whole(h, ctx, id), id)).orElseThrow(NoSuchElementException::new);
        if (about.name() != null && !about.name().strip().equals(now.name())) {
            players.rename(id, about.name(), Access.scope(ctx.req()), who(ctx, null));
        }
        players.describe(id, about.hand(), about.units(), about.remark());
        Json.send(ctx, new Done(true));
    }

    private void merge(Context ctx) {
        int id = LogbookFilter.id(ctx);
        int into = Json.read(ctx, Merging.class).into();
        store.read(h -> Players.one(h, Access.sight(h, ctx.req()), into)).orElseThrow(NoSuchElementException::new);
        store.read(h -> List.of(whole(h, ctx, id), whole(h, ctx, into)));
        players.merge(id, into, who(ctx, null));
        Json.send(ctx, new Done(true));
    }

    private void forget(Context ctx) {
        int id = LogbookFilter.id(ctx);
        store.read(h -> whole(h, ctx, id));
        List<Integer> mentions = players.forget(id, who(ctx, null));
        Json.send(ctx, new Forgotten(store.read(h -> {
            Sight sight = Access.sight(h, ctx.req());
            return mentions.stream().filter(note -> sight.seesNote(h, note)).toList();
        })));
    }

    private void reassign(Context ctx) {
        Reassignment asked = Json.read(ctx, Reassignment.class);
        String name = asked.player() == null ? "" : asked.player();
        PlayerRow to = store.read(h -> Players.named(h, Access.sight(h, ctx.req()), name)).orElseThrow(() -> Refusal.conflict(
                "Nobody is called that. Choose one of the players, or add the player first."));
        record.reassigns(LogbookFilter.id(ctx), to.id(), who(ctx, asked.reason()));
        Json.send(ctx, new Done(true));
    }

    /** What whoever asks sees, where they see all there is of a player: else what is said of the player is not theirs alone. */
    private static Sight whole(Handle h, Context ctx, int player) {
        Sight sight = Access.sight(h, ctx.req());
        if (!sight.isAll() && sight.seesPlayer(h, player) && !sight.seesWhole(h, player)) {
            throw Refusal.conflict("A player of this name has played elsewhere on this host, too. Whoever looks after all studios can do it.");
        }
        return sight;
    }

    private Who who(Context ctx, String reasonOrNull) {
        return new Who(Access.who(ctx.req()), reasonOrNull, clock.millis());
    }

    private static String words(Context ctx) {
        return Json.read(ctx, Words.class).words();
    }

    /** What the books refuse is told as they say it. */
    private static Handler changing(Handler handler) {
        return ctx -> {
            try {
                handler.handle(ctx);
            } catch (IllegalArgumentException e) {
                throw Refusal.badRequest(Refusal.sentence(e.getMessage()));
            } catch (NoSuchElementException e) {
                throw Refusal.notFound("That is not there any more.");
            }
        };
    }
}
