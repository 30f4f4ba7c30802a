package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletRequest;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.cupbeam.event.Score;
import org.cupbeam.studio.store.staff.Account;
import org.cupbeam.studio.web.access.Person;
import org.cupbeam.studio.web.access.Right;
import org.cupbeam.studio.web.access.Sessions;
import org.cupbeam.studio.web.access.Sessions.Session;
import org.cupbeam.studio.web.access.Staff;
import org.cupbeam.studio.web.access.StaffPin;
import org.cupbeam.studio.web.access.Tries;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Signing in and out, by the PIN or by name and secret; setting the PIN, and one's own secret. */
final class AccessRoutes implements Routes {
    private static final Logger LOG = LoggerFactory.getLogger(AccessRoutes.class);
    private static final String NAMELESS = "staff";

    /**
     * How things stand with a browser.
     *
     * @param guarded whether anybody has to sign in; {@code byName} whether by name and secret
     * @param role    null, as are the next ones, for one that is not staff's
     * @param may     what that role may, by the words of {@link Right}
     * @param studios that they look after; null for all
     */
    private record Standing(boolean staff, boolean pinSet, boolean guarded, boolean byName, String who, String token, String role,
                            List<String> may, List<String> studios) {
    }

    private record SignIn(String pin, String who, String name, String secret) {
    }

    private record NewPin(String now, String next) {
    }

    private final Staff people;
    private final StaffPin pin;
    private final Sessions sessions;
    private final Tries tries;
    private final StaffRoutes staff;

    /** @param staff keeps what is changed of those who sign in by name */
    AccessRoutes(Staff people, Sessions sessions, Tries tries, StaffRoutes staff) {
        this.people = people;
        this.pin = people.pin();
        this.sessions = sessions;
        this.tries = tries;
        this.staff = staff;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/sign-in", Page.of("sign-in.html"));
        routes.get("/api/session", this::standing);
        routes.post("/api/session", this::signIn);
        routes.delete("/api/session", this::signOut);
        routes.put("/api/pin", this::change);
        routes.put("/api/session/secret", this::changeOwn);
    }

    /** While no PIN is set, whoever sits here is given a session on asking: its token keeps other sites' pages out. */
    private void standing(Context ctx) {
        Optional<Session> session = Access.session(ctx.req());
        if (session.isEmpty() && !people.isGuarded() && Caller.sitsHere(ctx.req()) && Caller.isOurPage(ctx.req())) {
            session = Optional.of(open(ctx, NAMELESS, 0, people.stamp()));
        }
        answer(ctx, session.orElse(null));
    }

    private void signIn(Context ctx) {
        SignIn asked = Json.read(ctx, SignIn.class);
        if (people.isByName()) {
            byName(ctx, asked);
            return;
        }
        if (!pin.isSet()) {
            throw Refusal.conflict("No staff PIN is set yet: it can be set on the studio computer alone.");
        }
        if (!rightPin(ctx.req(), asked.pin())) {
            LOG.warn("a wrong PIN from {}", ctx.req().getRemoteAddr());
            throw Refusal.forbidden("That is not the PIN.");
        }
        sessions.close(Cookies.session(ctx.req()));
        answer(ctx, open(ctx, name(asked.who()), 0, people.stamp()));
    }

    private void byName(Context ctx, SignIn asked) {
        if (asked.name() == null || asked.name().isBlank() || asked.secret() == null || asked.secret().isEmpty()) {
            throw Refusal.badRequest("Here the staff sign in by name and secret. Both are needed.");
        }
        Optional<Account> account = tried(ctx.req(), () -> people.by(asked.name(), asked.secret()));
        if (account.isEmpty()) {
            LOG.warn("a wrong name or secret from {}", ctx.req().getRemoteAddr());
            throw Refusal.forbidden("That is no name and secret that belong together.");
        }
        sessions.close(Cookies.session(ctx.req()));
        answer(ctx, open(ctx, account.get().name(), account.get().id(), account.get().stamp()));
    }

    /** Gives whoever is signed in by name another secret. All their sessions but this end. */
    private void changeOwn(Context ctx) {
        NewPin asked = Json.read(ctx, NewPin.class);
        Person asks = Access.person(ctx.req()).orElseThrow();
        Account own = people.roster().numbered(asks.account()).orElseThrow(() ->
                Refusal.conflict("Nobody signs in by name here yet."));
        if (asked.next() == null || asked.now() == null) {
            throw Refusal.badRequest("The secret of now and a new one are needed.");
        }
        if (tried(ctx.req(), () -> people.by(own.name(), asked.now()).filter(each -> each.id() == own.id())).isEmpty()) {
            throw Refusal.forbidden("The secret of now is another one. Nothing was changed.");
        }
        Account now = staff.secret(asks, own.id(), asked.next());
        sessions.close(Cookies.session(ctx.req()));
        answer(ctx, open(ctx, now.name(), now.id(), now.stamp()));
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
        if (people.isByName()) {
            standing(ctx);
            return;
        }
        sessions.close(Cookies.session(ctx.req()));
        answer(ctx, open(ctx, who, 0, people.stamp()));
    }

    private boolean rightPin(HttpServletRequest request, String given) {
        if (given == null || given.isEmpty()) {
            throw Refusal.badRequest("The PIN is missing.");
        }
        return tried(request, () -> pin.is(given) ? Optional.of(true) : Optional.empty()).isPresent();
    }

    /** A try, where this address has one left: what comes of it, or empty for a wrong one. */
    private <T> Optional<T> tried(HttpServletRequest request, Supplier<Optional<T>> tryIt) {
        Duration wait = tries.ask(request.getRemoteAddr());
        if (!wait.isZero()) {
            throw Refusal.tooMany("Too many tries. Try again in " + words(wait) + ".");
        }
        Optional<T> right = tryIt.get();
        if (right.isPresent()) {
            tries.succeeded(request.getRemoteAddr());
        }
        return right;
    }

    /** Has somebody go on who was just made the first one with a name: the PIN, by which they came, opens no more. */
    void goOnAs(Context ctx, Account account) {
        sessions.close(Cookies.session(ctx.req()));
        open(ctx, account.name(), account.id(), account.stamp());
    }

    private Session open(Context ctx, String who, int account, String stamp) {
        Session session = sessions.open(who, account, stamp);
        Cookies.give(ctx.req(), ctx.res(), session.id());
        return session;
    }

    private void answer(Context ctx, Session sessionOrNull) {
        Person person = sessionOrNull == null ? null : people.person(sessionOrNull).orElse(null);
        Json.send(ctx, person == null ? new Standing(false, pin.isSet(), people.isGuarded(), people.isByName(), null, null, null, null, null)
                : new Standing(true, pin.isSet(), people.isGuarded(), people.isByName(), person.who(), sessionOrNull.token(),
                        person.role().word(), Arrays.stream(Right.values()).filter(person::may).map(Right::word).toList(),
                        person.scope().isAll() ? null : person.scope().studios().stream().sorted().toList()));
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
