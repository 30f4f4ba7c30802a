package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;

/** The addresses of one subject. */
interface Routes {
    void addTo(RoutesConfig routes);
}
