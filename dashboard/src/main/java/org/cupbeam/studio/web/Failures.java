package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import org.cupbeam.studio.store.StoreTrouble;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What is answered when there is nothing to answer: in words, and without what only the log should know. */
final class Failures implements Routes {
    private static final Logger LOG = LoggerFactory.getLogger(Failures.class);

    private static final int UNAVAILABLE = 503;

    private record Said(String error) {
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.exception(Refusal.class, (refusal, ctx) ->
                ctx.status(refusal.status()).contentType("application/json").result(refusal.json()));
        routes.exception(HttpResponseException.class, Failures::refused);
        routes.exception(StoreTrouble.class, Failures::notWritten);
        routes.exception(Exception.class, Failures::failed);
    }

    /** The server's own refusals: no such path, too much sent. */
    private static void refused(HttpResponseException e, Context ctx) {
        ctx.status(e.getStatus());
        if (e.getStatus() == 404 && !ctx.path().startsWith("/api/")) {
            Page.show(ctx, "not-found.html");
        } else {
            Json.send(ctx, new Said(e.getStatus() == 404 ? "There is nothing under that address."
                    : e.getStatus() == 413 ? "That is more than is taken in here at once." : "That cannot be asked here."));
        }
    }

    /** All of what was to be changed is as it was. */
    private static void notWritten(StoreTrouble e, Context ctx) {
        LOG.warn("{} {}: {}", ctx.method(), ctx.path(), e.getMessage());
        ctx.status(UNAVAILABLE);
        Json.send(ctx, new Said("Nothing was changed: the studio's store cannot be written at present. Its log says why."));
    }

    private static void failed(Exception e, Context ctx) {
        LOG.error("{} {}", ctx.method(), ctx.path(), e);
        ctx.status(500);
        Json.send(ctx, new Said("Something went wrong in the studio computer. Its log says what."));
    }
}
