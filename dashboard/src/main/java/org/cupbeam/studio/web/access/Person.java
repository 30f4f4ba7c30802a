package org.cupbeam.studio.web.access;

import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.staff.Account;
import org.cupbeam.studio.store.staff.Role;

/**
 * Somebody of the staff who asks for something.
 *
 * @param account the number of who signed in by name; 0 for whoever came by the PIN, or sits here while there is none
 * @param who     as corrections carry it
 */
public record Person(int account, String who, Role role, Scope scope) {
    /** Whoever sits at this machine while nobody has to sign in. */
    public static final Person HERE = ofAll("staff");

    /** Whoever came by the PIN is an owner of all. */
    static Person ofAll(String who) {
        return new Person(0, who, Role.OWNER, Scope.ALL);
    }

    static Person of(Account account) {
        return new Person(account.id(), account.name(), account.role(), account.scope());
    }

    public boolean may(Right right) {
        return right.isOf(role) && (right != Right.HOST || scope.isAll());
    }
}
