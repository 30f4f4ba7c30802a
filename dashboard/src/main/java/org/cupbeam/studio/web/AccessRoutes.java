package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletRequest;
import java.time.Duration;
import java.util.Optional;
import org.cupbeam.event.Score;
import org.cupbeam.studio.web.access.Sessions;
import org.cupbeam.studio.web.access.Sessions.Session;
import org.cupbeam.studio.web.access.StaffPin;
import org.cupbeam.studio.web.access.Tries;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Signing in and out, and setting the PIN. */
final class AccessRoutes implements Routes {
    private static final Logger LOG = LoggerFactory.getLogger(AccessRoutes.class);
    private static final String NAMELESS = "staff";

    /** How things stand with a browser; the token is null for one that is not staff's. */
    private record Standing(boolean staff, boolean pinSet, String who, String token) {
    }

    private record SignIn(String pin, String who) {
    }

    private record NewPin(String now, String next) {
    }

    private final StaffPin pin;
    private final Sessions sessions;
    private final Tries tries;
    private final Access access;

    AccessRoutes(StaffPin pin, Sessions sessions, Tries tries, Access access) {
        this.pin = pin;
        this.sessions = sessions;
        this.tries = tries;
        this.access = access;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/sign-in", Page.of("sign-in.html"));
        routes.get("/api/session", this::standing);
        routes.post("/api/session", this::signIn);
        routes.delete("/api/session", this::signOut);
        routes.put("/api/pin", this::change);
    }

    /** While no PIN is set, whoever sits here is given a session on asking: its token keeps other sites' pages out. */
    private void standing(Context ctx) {
        Optional<Session> session = Access.session(ctx.req());
        if (session.isEmpty() && !pin.isSet() && Caller.sitsHere(ctx.req()) && Caller.isOurPage(ctx.req())) {
            session = Optional.of(open(ctx, NAMELESS));
        }
        answer(ctx, session.orElse(null));
    }

    private void signIn(Context ctx) {
        SignIn asked = Json.read(ctx, SignIn.class);
        if (!pin.isSet()) {
            throw Refusal.conflict("No staff PIN is set yet: it can be set on the studio computer alone.");
        }
        if (!rightPin(ctx.req(), asked.pin())) {
            LOG.warn("a wrong PIN from {}", ctx.req().getRemoteAddr());
            throw Refusal.forbidden("That is not the PIN.");
        }
        sessions.close(Cookies.session(ctx.req()));
        answer(ctx, open(ctx, name(asked.who())));
    }

    private void signOut(Context ctx) {
        sessions.close(Cookies.session(ctx.req()));
        Cookies.takeAway(ctx.res());
        answer(ctx, null);
    }

    /** Sets the first PIN, or another one for whoever knows the one that there is. All sessions but this end. */
    private void change(Context ctx) {
        NewPin asked = Json.read(ctx, NewPin.class);
        if (asked.next() == null) {
            throw Refusal.badRequest("A new PIN is needed.");
        }
        StaffPin.objection(asked.next()).ifPresent(why -> {
            throw Refusal.badRequest(why);
        });
        if (pin.isSet() && !rightPin(ctx.req(), asked.now())) {
            throw Refusal.forbidden("The PIN of now is another one. Nothing was changed.");
        }
        String who = Access.who(ctx.req());
        pin.set(asked.next());
        LOG.info("the staff PIN was set by {} from {}", who, ctx.req().getRemoteAddr());
        sessions.close(Cookies.session(ctx.req()));
        answer(ctx, open(ctx, who));
    }

    private boolean rightPin(HttpServletRequest request, String given) {
        if (given == null || given.isEmpty()) {
            throw Refusal.badRequest("The PIN is missing.");
        }
        Duration wait = tries.ask(request.getRemoteAddr());
        if (!wait.isZero()) {
            throw Refusal.tooMany("Too many tries. Try again in " + words(wait) + ".");
        }
        boolean right = pin.is(given);
        if (right) {
            tries.succeeded(request.getRemoteAddr());
        }
        return right;
    }

    private Session open(Context ctx, String who) {
        Session session = sessions.open(who, access.stamp());
        Cookies.give(ctx.req(), ctx.res(), session.id());
        return session;
    }

    private void answer(Context ctx, Session sessionOrNull) {
        Json.send(ctx, sessionOrNull == null ? new Standing(false, pin.isSet(), null, null)
                : new Standing(true, pin.isSet(), sessionOrNull.who(), sessionOrNull.token()));
    }

    /** As corrections will carry it: on one line, and no longer than the lanes take. */
    private static String name(String given) {
        String clean = given == null ? "" : given.replaceAll("[\\p{Cc}\\p{Cs}]", " ").strip();
        int length = Math.min(clean.codePointCount(0, clean.length()), Score.MAX_NAME);
        return clean.isEmpty() ? NAMELESS : clean.substring(0, clean.offsetByCodePoints(0, length)).strip();
    }

    private static String words(Duration wait) {
        long seconds = Math.max(1, wait.toSeconds() + (wait.toNanosPart() > 0 ? 1 : 0));
        return seconds < 100 ? seconds + (seconds == 1 ? " second" : " seconds") : (seconds + 59) / 60 + " minutes";
    }
}
