package org.cupbeam.studio.lease;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.OptionalLong;
import java.util.function.Function;
import org.cupbeam.studio.ingest.NotOurTurn;
import org.jdbi.v3.core.ConnectionFactory;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * A site's lease as a row of PostgreSQL's. It is asked for on a connection of its own, so that no long transaction of this
 * host keeps it from being renewed; the commits of events hold it within their own.
 *
 * <p>Why no advisory lock of the session: it is let go when the server notices that the connection is gone, which for a
 * machine that lost its power may be hours later, and it does not stop a holder that wakes up from writing.
 */
public final class LeaseRow implements Lease {
    private static final String NOW_MS = "CAST(extract(epoch FROM clock_timestamp()) * 1000 AS BIGINT)";
    private static final int ANSWER_MS = 3_000;

    private final ConnectionFactory connections;
    private final String site;
    private final String holder;
    private Handle handle;

    /**
     * @param connections to the database, which may write
     * @param site        all hosts at one broker
     * @param holder      this host, for people
     */
    public LeaseRow(ConnectionFactory connections, String site, String holder) {
        this.connections = connections;
        this.site = site;
        this.holder = holder;
    }

    @Override
    public OptionalLong take(Duration time) {
        return ask(h -> {
            h.execute("INSERT INTO ingest_lease (site, holder, token, until_ms) VALUES (?, '', 0, 0) "
                    + "ON CONFLICT DO NOTHING", site);
            return h.createQuery("UPDATE ingest_lease SET holder = :holder, token = token + 1, until_ms = " + NOW_MS
                            + " + :time WHERE site = :site AND until_ms < " + NOW_MS + " RETURNING token")
                    .bind("holder", holder).bind("time", time.toMillis()).bind("site", site).mapTo(Long.class).findOne()
                    .map(OptionalLong::of).orElse(OptionalLong.empty());
        });
    }

    @Override
    public boolean renew(long token, Duration time) {
        return ask(h -> extended(h, token, time));
    }

    @Override
    public void giveUp(long token) {
        ask(h -> h.execute("UPDATE ingest_lease SET until_ms = 0 WHERE site = ? AND token = ?", site, token));
    }

    /**
     * As the last act of a transaction: nobody takes the lease before it is committed.
     *
     * @throws NotOurTurn where it has another token
     */
    public void hold(Handle h, long token, Duration time) {
        if (!extended(h, token, time)) {
            throw new NotOurTurn("the lease of " + site + " has been taken by another host");
        }
    }

    @Override
    public synchronized void close() {
        if (handle != null) {
            handle.close();
            handle = null;
        }
    }

    private boolean extended(Handle h, long token, Duration time) {
        return h.execute("UPDATE ingest_lease SET until_ms = " + NOW_MS + " + ? WHERE site = ? AND token = ?",
                time.toMillis(), site, token) == 1;
    }

    private synchronized <T> T ask(Function<Handle, T> question) {
        try {
            if (handle == null) {
                handle = Jdbi.create(this::connection).open();
            }
            return question.apply(handle);
        } catch (RuntimeException e) {
            close();
            throw e;
        }
    }

    /** Answers soon or not at all: a lease that is not renewed in time is lost anyway. */
    private Connection connection() throws SQLException {
        Connection connection = connections.openConnection();
        connection.setNetworkTimeout(Runnable::run, ANSWER_MS);
        try (Statement statement = connection.createStatement()) {
            statement.execute("SET lock_timeout = '2s'");
        }
        return connection;
    }
}
