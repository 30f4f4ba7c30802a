package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.router.Endpoint;
import java.util.Optional;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.Person;
import org.cupbeam.studio.web.access.Right;

/**
 * Asks of whoever has come through {@link Access} for what {@link Addresses} says the address asks, and whether what it names is
 * theirs. Comes before every route, so that none can forget to.
 */
final class Guard implements Routes {
    private final Store store;

    Guard(Store store) {
        this.store = store;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.beforeMatched(this::ask);
    }

    private void ask(Context ctx) {
        Endpoint route = ctx.endpoints().matchedHttpEndpoint();
        if (route == null) {
            return; // a file of a page's, the same for everybody
        }
        Right right = Addresses.right(route.method.name(), route.path).orElseThrow(() ->
                new IllegalStateException(route.method.name() + " " + route.path + " is in no line of Addresses"));
        Optional<Person> person = Access.person(ctx.req());
        if (right == Right.ANYBODY || Access.scrapes(ctx.req())) {
            return;
        }
        if (person.isPresent() && person.get().may(right)) {
            if (!person.get().scope().isAll()) {
                Theirs.ask(store, person.get().scope(), ctx, route.path);
            }
            return;
        }
        if (ctx.path().startsWith("/api/") || !route.method.name().equals("GET")) {
            throw Refusal.forbidden("That is for " + right.who() + ".");
        }
        ctx.status(403);
        Page.show(ctx, "not-yours.html");
        ctx.skipRemainingHandlers();
    }
}
