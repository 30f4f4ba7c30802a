package org.cupbeam.studio.lease;

import java.util.UUID;
import org.jdbi.v3.core.Handle;

/** The one pen that all hosts at a database write with, a transaction each. */
public final class Pen {
    /** Takes it as no host: each of them notices when it writes next. */
    public static final String TAKEN_BY_NOBODY = "UPDATE pen SET writer = '' WHERE id = 1";

    private final String writer = UUID.randomUUID().toString();

    /**
     * Waits until nobody else writes; to be the first act of a transaction, and held until its end.
     *
     * @return whether another has written since the last time
     */
    public boolean take(Handle h) {
        String last = h.createQuery("SELECT writer FROM pen WHERE id = 1 FOR UPDATE").mapTo(String.class).one();
        if (last.equals(writer)) {
            return false;
        }
        h.execute("UPDATE pen SET writer = ? WHERE id = 1", writer);
        return true;
    }
}
