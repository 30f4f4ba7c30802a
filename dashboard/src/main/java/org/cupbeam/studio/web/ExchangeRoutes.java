package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.NoSuchElementException;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.logbook.Dossier;
import org.cupbeam.studio.store.logbook.Importer;
import org.cupbeam.studio.store.logbook.LogFilter;
import org.cupbeam.studio.store.logbook.LogSheets;
import org.cupbeam.studio.store.sheet.BadRow;
import org.cupbeam.studio.usage.StudioTime;

/** The record as files: what is listed, all that is held of a player, the whole of it; and back in again. */
final class ExchangeRoutes implements Routes {
    private static final long MOST_BYTES = 1L << 30;

    private final Store store;
    private final Clock clock;

    ExchangeRoutes(Store store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/api/players/export", ctx -> Download.send(ctx, "players", List.of(LogSheets.players(store, Access.scope(ctx.req())))));
        routes.get("/api/runs/export", this::listed);
        routes.get("/api/player/{id}/export", this::player);
        routes.get("/api/record/export", ctx -> Download.send(ctx, "cupbeam-record", LogSheets.book(store,
                LogFilter.ALL.within(Access.scope(ctx.req())))));
        routes.post("/api/import", this::bring);
    }

    private void listed(Context ctx) {
        ZoneId zone = store.read(h -> StudioTime.of(h, clock.getZone()).zone());
        LogFilter filter = LogbookFilter.of(ctx, zone);
        Download.send(ctx, "logbook", List.of(LogSheets.runs(store, filter), LogSheets.attempts(store, filter)));
    }

    private void player(Context ctx) {
        int id = LogbookFilter.id(ctx);
        try {
            Download.send(ctx, "player-" + id, Dossier.of(store, Access.scope(ctx.req()), id));
        } catch (NoSuchElementException e) {
            throw Refusal.notFound("There is no such player.");
        }
    }

    /** The body is the file itself, read as it comes: JSON, or CSV where its type says so. */
    private void bring(Context ctx) {
        if (ctx.req().getContentLengthLong() > MOST_BYTES) {
            throw Refusal.badRequest("The file is larger than " + (MOST_BYTES >> 20) + " MB. Bring it in parts, as CSV.");
        }
        boolean csv = ctx.contentType() != null && ctx.contentType().startsWith("text/csv");
        try {
            Json.send(ctx, Importer.take(store, "the file", csv ? Importer.Form.CSV : Importer.Form.JSON,
                    ctx.req().getInputStream(), new Who(Access.who(ctx.req()), null, clock.millis())));
        } catch (BadRow e) {
            throw Refusal.badRequest(e.getMessage());
        } catch (IOException e) {
            throw Refusal.badRequest("The file broke off on its way; what had come of it is in. Bring it once more.");
        }
    }
}
