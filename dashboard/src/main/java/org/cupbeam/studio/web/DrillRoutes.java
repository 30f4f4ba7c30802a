package org.cupbeam.studio.web;

import com.fasterxml.jackson.annotation.JsonRawValue;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillCheck;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.cupbeam.studio.store.Shelf;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.usage.StudioTime;
import org.jdbi.v3.core.Handle;

/** Drills to choose from and to make: those that come with the product, and the studio's own. */
final class DrillRoutes implements Routes {
    private static final int LONGEST_FILE = 20_000;
    private static final List<String> SOLO = List.of("Ada");
    private static final List<String> DUEL = List.of("Ada", "Bo");

    private record Listed(String zone, List<Preset> presets, List<Own> own) {
    }

    private record Preset(String key, @JsonRawValue String drill) {
    }

    private record Own(int id, int version, @JsonRawValue String drill, String changedBy, long changedMs) {
        static Own of(Shelf.Kept kept) {
            return new Own(kept.id(), kept.version(), DrillJson.text(kept.drill()), kept.changedBy(), kept.changedMs());
        }
    }

    private record Sent(ObjectNode drill, Integer version) {
    }

    private record Text(String text) {
    }

    private record Read(@JsonRawValue String drill, List<DrillCheck.Fault> faults) {
    }

    private record Rehearse(ObjectNode drill, boolean duel, String putts, Double rigLimitMm) {
    }

    private final Store store;
    private final Clock clock;

    /** @param clock also gives the time zone where the studio's is not set */
    DrillRoutes(Store store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/drills", Page.of("drills.html"));
        routes.get("/api/drills", this::list);
        routes.post("/api/drills", this::add);
        routes.put("/api/drills/{id}", this::change);
        routes.delete("/api/drills/{id}", this::takeOff);
        routes.post("/api/drills/{id}/put-back", ctx -> answer(ctx, h -> Shelf.putBack(h, Access.scope(ctx.req()), id(ctx))));
        routes.get("/api/drills/{id}/file", this::file);
        routes.get("/api/presets/{key}/file", this::presetFile);
        routes.post("/api/drill-text/read", this::read);
        routes.post("/api/drill-text/write", ctx -> Json.send(ctx,
                new Text(DrillFile.text(drill(Json.read(ctx, Sent.class).drill())))));
        routes.post("/api/drill-rehearsal", this::rehearse);
    }

    private void list(Context ctx) {
        Json.send(ctx, new Listed(store.read(h -> StudioTime.of(h, clock.getZone()).zone()).getId(),
                DrillFile.presets().stream().map(key -> new Preset(key, DrillJson.text(DrillFile.preset(key)))).toList(),
                store.read(h -> Shelf.all(h, Access.scope(ctx.req()))).stream().map(Own::of).toList()));
    }

    private void add(Context ctx) {
        Drill drill = drill(Json.read(ctx, Sent.class).drill());
        String who = Access.who(ctx.req());
        answer(ctx, h -> Shelf.add(h, Access.scope(ctx.req()), drill, who, clock.millis()));
    }

    private void change(Context ctx) {
        Sent sent = Json.read(ctx, Sent.class);
        Drill drill = drill(sent.drill());
        int version = version(sent);
        String who = Access.who(ctx.req());
        answer(ctx, h -> Shelf.change(h, Access.scope(ctx.req()), id(ctx), version, drill, who, clock.millis()));
    }

    private void takeOff(Context ctx) {
        int version = version(Json.read(ctx, Sent.class));
        store.read(h -> Shelf.objection(h, Access.scope(ctx.req()), id(ctx))).ifPresent(each -> {
            throw refusal(each);
        });
        if (!store.write(h -> Shelf.takeOff(h, id(ctx), version, clock.millis()))) {
            throw refusal(Shelf.Objection.CHANGED_SINCE);
        }
        ctx.status(204);
    }

    private void answer(Context ctx, Function<Handle, Shelf.Change> change) {
        Shelf.Change done = store.write(change);
        if (done.objection() != null) {
            throw refusal(done.objection());
        }
        Json.send(ctx, Own.of(done.kept()));
    }

    private static Refusal refusal(Shelf.Objection objection) {
        return Refusal.conflict(switch (objection) {
            case NAME_TAKEN -> "There is a drill of that name already. Give this one another name.";
            case CHANGED_SINCE -> "Somebody has changed this drill in the meantime, or taken it off. Load the page again.";
            case NOT_YOURS -> "This drill is for all studios: whoever looks after all can change it. Copy it to have one of your own.";
            case FULL -> "There are " + Shelf.MOST + " drills. Take one off first.";
        });
    }

    private void file(Context ctx) {
        Drill drill = store.read(h -> Shelf.find(h, Access.scope(ctx.req()), id(ctx))).orElseThrow(() ->
                Refusal.notFound("That drill is not there any more.")).drill();
        download(ctx, drill.name(), DrillFile.text(drill));
    }

    private void presetFile(Context ctx) {
        String key = ctx.pathParam("key");
        if (!DrillFile.presets().contains(key)) {
            throw Refusal.notFound("No drill comes under that name.");
        }
        download(ctx, key, DrillFile.presetText(key));
    }

    /** A file name of letters, digits and hyphens only, whatever the drill is called. */
    private static void download(Context ctx, String name, String text) {
        String plain = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        ctx.contentType("application/toml; charset=utf-8").header("Cache-Control", "no-store")
                .header("Content-Disposition", "attachment; filename=\"" + (plain.isEmpty() ? "drill" : plain) + ".toml\"")
                .result(text);
    }

    private void read(Context ctx) {
        String text = Json.read(ctx, Text.class).text();
        if (text == null || text.length() > LONGEST_FILE) {
            throw Refusal.badRequest("A drill file has at most " + LONGEST_FILE + " characters.");
        }
        DrillCheck check = DrillCheck.of(text);
        Json.send(ctx, check instanceof DrillCheck.Fine fine ? new Read(DrillJson.text(fine.drill()), List.of())
                : new Read(null, ((DrillCheck.Faulty) check).faults()));
    }

    private void rehearse(Context ctx) {
        Rehearse asked = Json.read(ctx, Rehearse.class);
        double limitMm = asked.rigLimitMm() == null ? 914.4 : asked.rigLimitMm();
        if (asked.putts() == null || !asked.putts().matches(Rehearsal.KINDS) || !(limitMm >= 0 && limitMm <= Drill.LIMIT_MAX_MM)) {
            throw Refusal.badRequest("Putts are h, s, m or p: holed, short, missed, past the limit.");
        }
        Json.send(ctx, Rehearsal.of(drill(asked.drill()), asked.duel() ? DUEL : SOLO, asked.putts(), limitMm));
    }

    private static Drill drill(ObjectNode sent) {
        if (sent == null) {
            throw Refusal.badRequest("A drill is missing.");
        }
        try {
            return DrillJson.read(sent.toString());
        } catch (BadMessage e) {
            throw Refusal.badRequest("That is no drill yet: " + e.getMessage() + ".");
        }
    }

    private static int version(Sent sent) {
        if (sent.version() == null) {
            throw Refusal.badRequest("Which version of the drill is meant has to be said.");
        }
        return sent.version();
    }

    private static int id(Context ctx) {
        try {
            return Integer.parseInt(ctx.pathParam("id"));
        } catch (NumberFormatException e) {
            throw Refusal.notFound("Drills are known by numbers.");
        }
    }
}
