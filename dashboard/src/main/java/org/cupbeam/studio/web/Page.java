package org.cupbeam.studio.web;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** A page: one of the files in the resources' folder {@code web}, whatever is behind its address. */
final class Page {
    private Page() {
    }

    static Handler of(String file) {
        return ctx -> show(ctx, file);
    }

    static void show(Context ctx, String file) {
        try (InputStream in = Page.class.getResourceAsStream("/web/" + file)) {
            ctx.header("Cache-Control", "no-cache").contentType("text/html; charset=utf-8").result(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException("page " + file, e);
        }
    }
}
