package org.cupbeam.studio.web;

import io.javalin.http.Handler;
import java.io.InputStream;

/** A page: one of the files in the resources' folder {@code web}, whatever is behind its address. */
final class Page {
    private Page() {
    }

    static Handler of(String file) {
        return ctx -> {
            try (InputStream in = Page.class.getResourceAsStream("/web/" + file)) {
                ctx.header("Cache-Control", "no-cache").contentType("text/html; charset=utf-8")
                        .result(in.readAllBytes());
            }
        };
    }
}
