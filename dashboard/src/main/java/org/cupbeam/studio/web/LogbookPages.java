package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;

/** The logbook's pages; what they show they ask for. */
final class LogbookPages implements Routes {
    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/players", Page.of("players.html"));
        routes.get("/player/{id}", Page.of("player.html"));
        routes.get("/runs", Page.of("runs.html"));
        routes.get("/run/{id}", Page.of("run.html"));
        routes.get("/report/{id}", Page.of("report.html"));
    }
}
