package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import org.cupbeam.studio.store.NoteBook;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.logbook.PlayerRow;
import org.cupbeam.studio.store.logbook.Players;

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
                new Made(notes.onPlayer(LogbookFilter.id(ctx), words(ctx), who(ctx, null))))));
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
        int id = players.add(about.name(), clock.millis());
        players.describe(id, about.hand(), about.units(), about.remark());
        Json.send(ctx, new Made(id));
    }

    private void describe(Context ctx) {
        int id = LogbookFilter.id(ctx);
        About about = Json.read(ctx, About.class);
        PlayerRow now = store.read(h -> Players.one(h, id)).orElseThrow(NoSuchElementException::new);
        if (about.name() != null && !about.name().strip().equals(now.name())) {
            players.rename(id, about.name(), who(ctx, null));
        }
        players.describe(id, about.hand(), about.units(), about.remark());
        Json.send(ctx, new Done(true));
    }

    private void merge(Context ctx) {
        players.merge(LogbookFilter.id(ctx), Json.read(ctx, Merging.class).into(), who(ctx, null));
        Json.send(ctx, new Done(true));
    }

    private void forget(Context ctx) {
        Json.send(ctx, new Forgotten(players.forget(LogbookFilter.id(ctx), who(ctx, null))));
    }

    private void reassign(Context ctx) {
        Reassignment asked = Json.read(ctx, Reassignment.class);
        String name = asked.player() == null ? "" : asked.player();
        PlayerRow to = store.read(h -> Players.named(h, name)).orElseThrow(() -> Refusal.conflict(
                "Nobody is called that. Choose one of the players, or add the player first."));
        record.reassigns(LogbookFilter.id(ctx), to.id(), who(ctx, asked.reason()));
        Json.send(ctx, new Done(true));
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
                throw Refusal.badRequest(sentence(e.getMessage()));
            } catch (NoSuchElementException e) {
                throw Refusal.notFound("That is not there any more.");
            }
        };
    }

    private static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
    }
}
