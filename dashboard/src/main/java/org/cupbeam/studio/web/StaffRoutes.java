package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import org.cupbeam.event.Words;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.staff.Account;
import org.cupbeam.studio.store.staff.Role;
import org.cupbeam.studio.store.staff.StaffBook;
import org.cupbeam.studio.web.access.Person;
import org.cupbeam.studio.web.access.Right;
import org.cupbeam.studio.web.access.Sessions;
import org.cupbeam.studio.web.access.Staff;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Who signs in by name: an owner says so, of those whose studios are all the owner's own. */
final class StaffRoutes implements Routes {
    private static final Logger LOG = LoggerFactory.getLogger(StaffRoutes.class);

    /**
     * Somebody of the staff.
     *
     * @param studios  null for all
     * @param signedIn with so many browsers; {@code seenAgoS} since one of them last asked for something, null where none
     */
    private record One(int id, String name, String role, List<String> studios, boolean self, long createdMs, String changedBy,
                       long changedMs, int signedIn, Long seenAgoS) {
    }

    private record RoleSaid(String role, List<String> may) {
    }

    /** @param studios that may be given; @param all whether all may, those to come included */
    private record All(boolean pinSet, List<One> people, List<String> studios, boolean all, List<RoleSaid> roles) {
    }

    private record Given(String name, String secret, String role, List<String> studios) {
    }

    private record NewSecret(String secret) {
    }

    private record Made(int id) {
    }

    private final Store store;
    private final Staff people;
    private final Sessions sessions;
    private final InstantSource clock;
    private BiConsumer<Context, Account> goOn = (ctx, account) -> { };

    StaffRoutes(Store store, Staff people, Sessions sessions, InstantSource clock) {
        this.store = store;
        this.people = people;
        this.sessions = sessions;
        this.clock = clock;
    }

    /** @param how has whoever made the first one go on as that one */
    void goOnBy(BiConsumer<Context, Account> how) {
        goOn = how;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/staff", Page.of("staff.html"));
        routes.get("/api/staff", this::all);
        routes.post("/api/staff", this::add);
        routes.put("/api/staff/{id}", this::change);
        routes.put("/api/staff/{id}/secret", this::secret);
        routes.delete("/api/staff/{id}", this::takeAway);
        routes.post("/api/staff/{id}/put-back", this::putBack);
    }

    private void all(Context ctx) {
        Person asks = person(ctx);
        List<Account> accounts = store.read(StaffBook::all).stream().filter(each -> asks.scope().includes(each.scope())).toList();
        TreeSet<String> studios = new TreeSet<>(asks.scope().studios());
        store.read(h -> LaneName.all(h, Access.sight(h, ctx.req()))).stream().map(LaneName::studio).forEach(studios::add);
        accounts.forEach(each -> studios.addAll(each.scope().studios()));
        Json.send(ctx, new All(people.pin().isSet(), accounts.stream().map(each -> one(each, asks)).toList(), List.copyOf(studios),
                asks.scope().isAll(), Arrays.stream(Role.values()).map(StaffRoutes::said).toList()));
    }

    private One one(Account account, Person asks) {
        List<Duration> unseen = sessions.unseen(account.id());
        return new One(account.id(), account.name(), account.role().word(), studios(account.scope()), account.id() == asks.account(),
                account.createdMs(), account.changedBy(), account.changedMs(), unseen.size(),
                unseen.isEmpty() ? null : unseen.get(0).toSeconds());
    }

    private static RoleSaid said(Role role) {
        return new RoleSaid(role.word(), Arrays.stream(Right.values()).filter(each -> each.isOf(role)).map(Right::what).toList());
    }

    private void add(Context ctx) {
        Given given = Json.read(ctx, Given.class);
        Person asks = person(ctx);
        Scope scope = scope(given, asks);
        boolean first = !people.isByName();
        if (first && !people.pin().isSet()) {
            throw Refusal.conflict("Set a staff PIN first: it opens the pages again should all who sign in by name be taken away.");
        }
        Role role = role(given);
        Account made = refusing(() -> {
            String hash = people.secrets().hash(given.secret() == null ? "" : given.secret());
            return store.write(h -> StaffBook.add(h, given.name(), hash, role, scope, asks.who(), clock.millis()));
        });
        people.roster().changed();
        LOG.info("{} may sign in as {} for {}: {} said so", made.name(), made.role().word(), said(scope), asks.who());
        if (first) {
            goOn.accept(ctx, made);
        }
        Json.send(ctx, new Made(made.id()));
    }

    private void change(Context ctx) {
        Given given = Json.read(ctx, Given.class);
        Person asks = person(ctx);
        int id = LogbookFilter.id(ctx);
        notSelf(id, asks, "Somebody else has to change what you are.");
        Scope scope = scope(given, asks);
        Role role = role(given);
        Account now = refusing(() -> store.write(h -> StaffBook.change(h, asks.scope(), id, role, scope, asks.who(), clock.millis())));
        people.roster().changed();
        LOG.info("{} is {} for {} now: {} said so", now.name(), role.word(), said(scope), asks.who());
        Json.send(ctx, new Made(id));
    }

    private void secret(Context ctx) {
        NewSecret given = Json.read(ctx, NewSecret.class);
        Person asks = person(ctx);
        int id = LogbookFilter.id(ctx);
        notSelf(id, asks, "Change your own secret at the sign-in, where the one of now is asked for.");
        secret(asks, id, given.secret() == null ? "" : given.secret());
        Json.send(ctx, new Made(id));
    }

    /** Gives somebody another secret, which ends their sessions. */
    Account secret(Person asks, int id, String next) {
        Account now = refusing(() -> {
            String hash = people.secrets().hash(next);
            return store.write(h -> StaffBook.secret(h, asks.scope(), id, hash, asks.who(), clock.millis()));
        });
        people.roster().changed();
        LOG.info("{} has another secret: {} gave it", now.name(), asks.who());
        return now;
    }

    private void takeAway(Context ctx) {
        Person asks = person(ctx);
        int id = LogbookFilter.id(ctx);
        if (people.roster().all().size() > 1) {
            notSelf(id, asks, "Somebody else has to take you away.");
        }
        Account was = refusing(() -> store.write(h -> StaffBook.takeAway(h, asks.scope(), id, asks.who(), clock.millis())));
        people.roster().changed();
        LOG.info("{} may sign in no more: {} said so", was.name(), asks.who());
        ctx.status(204);
    }

    private void putBack(Context ctx) {
        Person asks = person(ctx);
        int id = LogbookFilter.id(ctx);
        Account back = refusing(() -> store.write(h -> StaffBook.putBack(h, asks.scope(), id, asks.who(), clock.millis())));
        people.roster().changed();
        LOG.info("{} may sign in again: {} said so", back.name(), asks.who());
        Json.send(ctx, new Made(back.id()));
    }

    private static void notSelf(int id, Person asks, String words) {
        if (id == asks.account()) {
            throw Refusal.conflict(words);
        }
    }

    private static Scope scope(Given given, Person asks) {
        Scope scope = refusing(() -> given.studios() == null ? Scope.ALL : Scope.of(given.studios()));
        if (!asks.scope().includes(scope)) {
            throw Refusal.badRequest("Give studios of your own, each by its name.");
        }
        return scope;
    }

    private static Role role(Given given) {
        Role role = given.role() == null ? null : Words.find(Role.class, given.role());
        if (role == null) {
            throw Refusal.badRequest("Give a role: owner, coach or desk.");
        }
        return role;
    }

    private static List<String> studios(Scope scope) {
        return scope.isAll() ? null : List.copyOf(new TreeSet<>(scope.studios()));
    }

    private static String said(Scope scope) {
        return scope.isAll() ? "all studios" : scope.text();
    }

    private static Person person(Context ctx) {
        return Access.person(ctx.req()).orElseThrow();
    }

    private static Refusal nobody() {
        return Refusal.notFound("There is nobody of that number.");
    }

    private static <T> T refusing(Supplier<T> change) {
        try {
            return change.get();
        } catch (IllegalArgumentException e) {
            throw Refusal.badRequest(Refusal.sentence(e.getMessage()));
        } catch (NoSuchElementException e) {
            throw nobody();
        }
    }
}
