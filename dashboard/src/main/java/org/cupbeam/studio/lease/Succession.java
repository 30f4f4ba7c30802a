package org.cupbeam.studio.lease;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.cupbeam.event.Source;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.ingest.NotOurTurn;
import org.cupbeam.studio.ingest.Turns;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Which of the hosts at one broker and one database keeps the events: whoever holds the lease. Asked once a second, it
 * goes from one state to the other:
 *
 * <pre>
 *            the lease was free, or its holder has not renewed it
 *   waiting ------------------------------------------------------> holding
 *      ^                                                               |  renewed: holding for longer
 *      '---------------------------------------------------------------'
 *            taken by another; or not renewed in time; or given up
 * </pre>
 *
 * A host whose store a newer version has brought up to date waits for ever.
 *
 * A holder that was held up and does not know yet that its time is over writes nothing: each commit is refused within the
 * database once the lease has another token.
 */
public final class Succession implements Turns, AutoCloseable {
    /** Keeps a batch where the lease still has this token, in one transaction, or throws {@link NotOurTurn}. */
    public interface Fenced {
        void commit(Batch batch, long token, Duration time);
    }

    private record Turn(long token, long goodUntilNs, EventLog log) {
    }

    private static final Logger LOG = LoggerFactory.getLogger(Succession.class);
    /** For how long a lease is taken and renewed. */
    static final Duration TIME = Duration.ofSeconds(5);
    /** How much sooner its holder takes it for lost than the database does: what clocks may differ by in that time. */
    static final Duration MARGIN = Duration.ofMillis(500);
    private static final long EVERY_MS = 1_000;

    private final Lease lease;
    private final EventLog log;
    private final Fenced fenced;
    private final BooleanSupplier isOutOfDate;
    private final LongSupplier nanoTime;
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "succession");
    private volatile Turn turn;

    /**
     * @param log    is asked what is kept
     * @param fenced keeps more
     * @param isOutOfDate whether this host may keep nothing any more
     */
    public Succession(Lease lease, EventLog log, Fenced fenced, BooleanSupplier isOutOfDate, LongSupplier nanoTime) {
        this.lease = lease;
        this.log = log;
        this.fenced = fenced;
        this.isOutOfDate = isOutOfDate;
        this.nanoTime = nanoTime;
    }

    public Succession start() {
        thread.setDaemon(true);
        thread.start();
        return this;
    }

    @Override
    public EventLog log() {
        Turn now = turn;
        return now != null && nanoTime.getAsLong() - now.goodUntilNs() < 0 ? now.log() : null;
    }

    /** One step, which a test takes by hand: tries to get the lease, or renews it. */
    synchronized void step() {
        long askedNs = nanoTime.getAsLong();
        try {
            if (isOutOfDate.getAsBoolean()) {
                leave();
            } else if (turn == null) {
                lease.take(TIME).ifPresent(token -> begin(token, askedNs));
            } else if (lease.renew(turn.token(), TIME)) {
                turn = new Turn(turn.token(), goodUntil(askedNs), turn.log());
            } else {
                end("another host has taken over");
            }
        } catch (RuntimeException e) {
            LOG.debug("the lease on what the lanes send cannot be asked for", e);
            if (turn != null && log() == null) {
                end("the store could not be asked in time (" + e.getMessage() + ")");
            }
        }
    }

    /** Stops, and lets another host go on at once. To be called when nothing is written any more. */
    @Override
    public void close() {
        closing.countDown();
        try {
            thread.join(5_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        synchronized (this) {
            if (turn != null) {
                long token = turn.token();
                turn = null;
                giveUp(token);
            }
        }
        lease.close();
    }

    private void run() {
        try {
            do {
                step();
            } while (!closing.await(EVERY_MS, TimeUnit.MILLISECONDS));
        } catch (InterruptedException e) {
            LOG.debug("succession interrupted");
        }
    }

    private void begin(long token, long askedNs) {
        turn = new Turn(token, goodUntil(askedNs), new OfTurn(token));
        LOG.info("this host keeps what the lanes send from now on (turn {})", token);
    }

    private synchronized void lost(long token) {
        if (turn != null && turn.token() == token) {
            end("another host has taken over");
        }
    }

    private void end(String why) {
        LOG.warn("this host no longer keeps what the lanes send: {}; it goes on showing it", why);
        turn = null;
    }

    /** For a host of a newer version, at once. */
    private void leave() {
        Turn last = turn;
        if (last != null) {
            end("a newer version has brought the store up to date");
            giveUp(last.token());
        }
    }

    private void giveUp(long token) {
        try {
            lease.giveUp(token);
        } catch (RuntimeException e) {
            LOG.debug("the lease runs out by itself", e);
        }
    }

    private static long goodUntil(long askedNs) {
        return askedNs + TIME.minus(MARGIN).toNanos();
    }

    /** The log of one turn. */
    private final class OfTurn implements EventLog {
        private final long token;

        OfTurn(long token) {
            this.token = token;
        }

        @Override
        public List<EventLog.Kept> kept() {
            return log.kept();
        }

        @Override
        public long upTo(Source source) {
            return log.upTo(source);
        }

        @Override
        public void readAgain() {
            log.readAgain();
        }

        @Override
        public boolean differs(Arrival arrival) {
            return log.differs(arrival);
        }

        @Override
        public void commit(Batch batch) {
            Turn now = turn;
            if (now == null || now.token() != token) {
                throw new NotOurTurn("turn " + token + " is over");
            }
            try {
                fenced.commit(batch, token, TIME);
            } catch (NotOurTurn e) {
                lost(token);
                throw e;
            }
        }
    }
}
