package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.prometheus.metrics.expositionformats.PrometheusTextFormatWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/**
 * For whoever operates the host: whether it lives ({@code /alive}), whether it can do its work ({@code /ready}), both without
 * signing in and without telling anything else; and its metrics, for staff and for whoever has the token.
 */
final class OperatorRoutes implements Routes {
    private static final long ASK_AGAIN_NS = 1_000_000_000L;
    private static final int UNAVAILABLE = 503;

    private final Metrics metrics;
    private final BooleanSupplier works;
    private final LongSupplier nanoTime;
    private final AtomicBoolean asking = new AtomicBoolean();
    private final PrometheusTextFormatWriter writer = PrometheusTextFormatWriter.create();
    private volatile boolean ready;
    private volatile long askedNs;

    /** @param works whether the host's parts can be reached; may be slow, so that it is asked once a second at most */
    OperatorRoutes(Metrics metrics, BooleanSupplier works, LongSupplier nanoTime) {
        this.metrics = metrics;
        this.works = works;
        this.nanoTime = nanoTime;
        this.askedNs = nanoTime.getAsLong() - ASK_AGAIN_NS;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/alive", ctx -> plain(ctx).result("alive\n"));
        routes.get("/ready", this::ready);
        routes.get("/metrics", this::metrics);
    }

    private void ready(Context ctx) {
        if (isReady()) {
            plain(ctx).result("ready\n");
        } else {
            plain(ctx).status(UNAVAILABLE).result("not ready\n");
        }
    }

    /** Strangers may ask as often as they like: one of them at a time has the parts asked, the others hear the last answer. */
    private boolean isReady() {
        long nowNs = nanoTime.getAsLong();
        if (nowNs - askedNs >= ASK_AGAIN_NS && asking.compareAndSet(false, true)) {
            try {
                ready = works.getAsBoolean();
                askedNs = nanoTime.getAsLong();
            } finally {
                asking.set(false);
            }
        }
        return ready;
    }

    private void metrics(Context ctx) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            writer.write(out, metrics.now());
        } catch (IOException e) {
            throw new UncheckedIOException("written to memory", e);
        }
        ctx.header("Cache-Control", "no-store").contentType(writer.getContentType()).result(out.toByteArray());
    }

    private static Context plain(Context ctx) {
        return ctx.header("Cache-Control", "no-store").contentType("text/plain; charset=utf-8");
    }
}
