package org.cupbeam.studio.web;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.jdbi.v3.core.Handle;

/**
 * Whether what an address names is of the studios that whoever asks looks after. What is not is answered as what is not there at
 * all: both are found out here, by the same question, and told in the same words.
 */
final class Theirs {
    /** By how an address begins, what its number is of. */
    private enum Thing {
        PLAYER, RUN, ATTEMPT, NOTE, SEEN_TO_THERE;

        static Thing of(String path) {
            String first = path.split("/")[2];
            return switch (first) {
                case "player", "report", "insight" -> PLAYER;
                case "run" -> RUN;
                case "attempt" -> ATTEMPT;
                case "note" -> NOTE;
                case "drills", "league", "staff" -> SEEN_TO_THERE; // a drill for all is seen and not changed, which its routes tell
                default -> throw new IllegalStateException(path + ": nobody has decided whose its number is");
            };
        }

        boolean isSeen(Handle h, Sight sight, int id) {
            return switch (this) {
                case PLAYER -> sight.seesPlayer(h, id);
                case RUN -> sight.seesRun(h, id);
                case ATTEMPT -> sight.seesAttempt(h, id);
                case NOTE -> sight.seesNote(h, id);
                case SEEN_TO_THERE -> true;
            };
        }
    }

    private Theirs() {
    }

    /** @param route as the address stands in the table; @throws Refusal where it is not theirs */
    static void ask(Store store, Scope scope, Context ctx, String route) {
        List<String> parts = List.of(route.split("/"));
        int studio = parts.indexOf("{studio}");
        if (studio >= 0 && !scope.includes(part(ctx, studio))) {
            if (!route.startsWith("/api/")) {
                throw new NotFoundResponse(); // a page of its own says so
            }
            throw Refusal.notFound("No lane of that name has been heard.");
        }
        int number = parts.indexOf("{id}");
        if (number >= 0 && route.startsWith("/api/")) {
            Thing thing = Thing.of(route);
            if (!isSeen(store, scope, thing, part(ctx, number))) {
                throw Refusal.notFound(!ctx.method().name().equals("GET") ? "That is not there any more."
                        : thing == Thing.RUN ? "There is no such run." : "There is no such player.");
            }
        }
    }

    private static boolean isSeen(Store store, Scope scope, Thing thing, String number) {
        return number.matches("[0-9]{1,9}")
                && store.read(h -> thing.isSeen(h, Sight.of(h, scope), Integer.parseInt(number)));
    }

    /** As it was written: what is written in another way than addresses here are is of nobody. */
    private static String part(Context ctx, int at) {
        String[] parts = ctx.path().split("/", -1);
        return at < parts.length ? parts[at] : "";
    }
}
