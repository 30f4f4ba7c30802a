package org.cupbeam.studio.web.access;

import java.util.Optional;
import org.cupbeam.studio.store.staff.Account;
import org.cupbeam.studio.web.access.Sessions.Session;

/**
 * Who is let in: by the PIN while nobody signs in by name, by name and secret from then on. A session lasts no longer than
 * what it was opened with: the PIN, or somebody's secret, role and studios.
 */
public final class Staff {
    private final StaffPin pin;
    private final Roster roster;
    private final Secrets secrets;

    public Staff(StaffPin pin, Roster roster, Secrets secrets) {
        this.pin = pin;
        this.roster = roster;
        this.secrets = secrets;
    }

    public StaffPin pin() {
        return pin;
    }

    public Roster roster() {
        return roster;
    }

    public Secrets secrets() {
        return secrets;
    }

    /** Whether anybody has to sign in at all; else whoever sits at this machine is staff. */
    public boolean isGuarded() {
        return pin.isSet() || isByName();
    }

    /** Whether they sign in by name, and the PIN opens nothing. */
    public boolean isByName() {
        return !roster.isEmpty();
    }

    /** Whether a session was opened with what holds now. */
    public boolean goesOn(Session session) {
        String now = session.account() == 0 ? stamp() : roster.numbered(session.account()).map(Account::stamp).orElse(null);
        return session.stamp().equals(now) && isByName() == (session.account() != 0);
    }

    /** Who a session is of; to be asked of one that goes on. */
    public Optional<Person> person(Session session) {
        return session.account() == 0 ? Optional.of(Person.ofAll(session.who()))
                : roster.numbered(session.account()).map(Person::of);
    }

    /** What tells the PIN of now from others; empty text while there is none. */
    public String stamp() {
        return pin.stamp().orElse("");
    }

    /** Whose name and secret these are. Takes long, and as long where nobody is called so. */
    public Optional<Account> by(String name, String secret) {
        Optional<Account> account = roster.named(name);
        return secrets.is(secret, account.map(Account::secret).orElse(null)) ? account : Optional.empty();
    }
}
