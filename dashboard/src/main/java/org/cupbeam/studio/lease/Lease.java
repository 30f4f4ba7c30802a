package org.cupbeam.studio.lease;

import java.time.Duration;
import java.util.OptionalLong;

/** The right to keep a site's events, which runs out by the database's clock. Each call may throw when that cannot be asked. */
public interface Lease extends AutoCloseable {
    /** Takes it where it is free or has run out. @return its token, greater than any before */
    OptionalLong take(Duration time);

    /** Has it last for a time from now. @return false where another has taken it */
    boolean renew(long token, Duration time);

    /** Lets the next one have it at once. */
    void giveUp(long token);

    @Override
    void close();
}
