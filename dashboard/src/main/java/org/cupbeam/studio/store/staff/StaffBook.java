package org.cupbeam.studio.store.staff;

import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import org.cupbeam.studio.store.NameKey;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Texts;
import org.jdbi.v3.core.Handle;

/**
 * Keeps the list of those who sign in by name. The first is an owner of all studios, and so is one at least of whoever is left.
 * What is refused is refused with an {@link IllegalArgumentException} that says why, who is not there with a
 * {@link NoSuchElementException}; and of those who look after more than the studios {@code within}, nobody is there.
 */
public final class StaffBook {
    /** The most people. */
    public static final int MOST = 200;
    private static final String THERE = "SELECT " + Account.COLUMNS + " FROM staff WHERE gone_ms IS NULL";

    private StaffBook() {
    }

    /** Everybody who is there, in order of names. */
    public static List<Account> all(Handle h) {
        return h.createQuery(THERE + " ORDER BY name_key, id").map(Account::read).list();
    }

    /** Who is there and called so. */
    public static Optional<Account> named(Handle h, String name) {
        return h.select(THERE + " AND name_key = ?", NameKey.of(name)).map(Account::read).findOne();
    }

    /** @param secret a hash; @param by who does it */
    public static Account add(Handle h, String name, String secret, Role role, Scope scope, String by, long nowMs) {
        String text = Texts.line("name", name, Texts.NAME);
        List<Account> all = all(h);
        require(all.size() < MOST, "there are " + MOST + " people of the staff; take one away first");
        require(!all.isEmpty() || role == Role.OWNER && scope.isAll(), "the first has to be an owner of all studios, "
                + "since the PIN opens no more from then on");
        require(scope.isAll() || !scope.studios().isEmpty(), "name one studio at least");
        free(h, text, 0);
        int id = h.createQuery("SELECT coalesce(max(id), 0) + 1 FROM staff").mapTo(Integer.class).one();
        h.execute("INSERT INTO staff (id, name, name_key, secret, role, studios, created_ms, changed_by, changed_ms) "
                + "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", id, text, NameKey.of(text), secret, role.word(), scope.text(), nowMs, by, nowMs);
        return one(h, Scope.ALL, id);
    }

    /** Has somebody be something else, for other studios. */
    public static Account change(Handle h, Scope within, int id, Role role, Scope scope, String by, long nowMs) {
        Account was = one(h, within, id);
        require(scope.isAll() || !scope.studios().isEmpty(), "name one studio at least");
        require(!was.isOwnerOfAll() || role == Role.OWNER && scope.isAll() || anotherOwner(h, id), onlyOwner(was));
        h.execute("UPDATE staff SET role = ?, studios = ?, changed_by = ?, changed_ms = ? WHERE id = ?", role.word(), scope.text(),
                by, nowMs, id);
        return one(h, Scope.ALL, id);
    }

    /** Gives somebody another secret. @param secret a hash */
    public static Account secret(Handle h, Scope within, int id, String secret, String by, long nowMs) {
        one(h, within, id);
        h.execute("UPDATE staff SET secret = ?, changed_by = ?, changed_ms = ? WHERE id = ?", secret, by, nowMs, id);
        return one(h, within, id);
    }

    /** Takes somebody away; the last of all may go, and the PIN opens again. @return who it was */
    public static Account takeAway(Handle h, Scope within, int id, String by, long nowMs) {
        Account was = one(h, within, id);
        require(!was.isOwnerOfAll() || all(h).size() == 1 || anotherOwner(h, id), onlyOwner(was));
        h.execute("UPDATE staff SET gone_ms = ?, changed_by = ?, changed_ms = ? WHERE id = ?", nowMs, by, nowMs, id);
        return was;
    }

    /** Puts back who was taken away: as they were, with the secret they had. */
    public static Account putBack(Handle h, Scope within, int id, String by, long nowMs) {
        Account gone = h.select("SELECT " + Account.COLUMNS + " FROM staff WHERE id = ? AND gone_ms IS NOT NULL", id).map(Account::read)
                .findOne().filter(each -> within.includes(each.scope()))
                .orElseThrow(() -> new NoSuchElementException("nobody " + id + " was taken away"));
        free(h, gone.name(), id);
        require(!all(h).isEmpty() || gone.isOwnerOfAll(), "the first has to be an owner of all studios, since the PIN opens no "
                + "more from then on");
        h.execute("UPDATE staff SET gone_ms = NULL, changed_by = ?, changed_ms = ? WHERE id = ?", by, nowMs, id);
        return one(h, within, id);
    }

    /** Takes everybody away: the PIN alone opens again. @return how many went */
    public static int clear(Handle h, String by, long nowMs) {
        return h.execute("UPDATE staff SET gone_ms = ?, changed_by = ?, changed_ms = ? WHERE gone_ms IS NULL", nowMs, by, nowMs);
    }

    private static Account one(Handle h, Scope within, int id) {
        return h.select(THERE + " AND id = ?", id).map(Account::read).findOne().filter(each -> within.includes(each.scope()))
                .orElseThrow(() -> new NoSuchElementException("there is nobody " + id));
    }

    private static void free(Handle h, String name, int exceptId) {
        require(h.select("SELECT id FROM staff WHERE name_key = ? AND id <> ? AND gone_ms IS NULL", NameKey.of(name), exceptId)
                .mapTo(Integer.class).findOne().isEmpty(), "somebody signs in as \"" + name + "\" already; add something to the name");
    }

    private static boolean anotherOwner(Handle h, int id) {
        return all(h).stream().anyMatch(each -> each.id() != id && each.isOwnerOfAll());
    }

    private static String onlyOwner(Account account) {
        return account.name() + " is the only owner of all studios; make another one first";
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
