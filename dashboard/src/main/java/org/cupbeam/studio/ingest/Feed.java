package org.cupbeam.studio.ingest;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps one connection to the broker up for as long as the host lives, in a thread of its own: connects, subscribes
 * anew every time, publishes what is to go out, and after a loss tries again for ever, with growing waits.
 */
public final class Feed implements AutoCloseable {
    /** What comes in and what happens; called on threads that must not be held up. */
    public interface Listener {
        void message(Message message);

        /** Connected and subscribed: retained messages of ours may be gone, say them again. */
        void connected();
    }

    private record Letter(Message message, boolean retained) {
    }

    private static final Logger LOG = LoggerFactory.getLogger(Feed.class);
    private static final int MOST_WAITING = 4_096;
    private static final long IDLE_MS = 250;
    private static final long HELD_LONG_ENOUGH_NS = Duration.ofSeconds(10).toNanos();

    private final Connection connection;
    private final List<String> filters;
    private final Listener listener;
    private final Backoff backoff;
    private final LongSupplier nanoTime;
    private final Latest<Letter> outgoing = new Latest<>(MOST_WAITING);
    private final AtomicLong sent = new AtomicLong();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "feed");
    private volatile boolean connected;
    private volatile String lostBecause;
    private long connectedNs;

    /** @param nanoTime a monotonic clock, ns */
    public Feed(Connection connection, List<String> filters, Listener listener, Backoff backoff,
                LongSupplier nanoTime) {
        this.connection = connection;
        this.filters = List.copyOf(filters);
        this.listener = listener;
        this.backoff = backoff;
        this.nanoTime = nanoTime;
    }

    public Feed start() {
        thread.setDaemon(true);
        thread.start();
        return this;
    }

    /** Whether the broker can be reached at present. */
    public boolean connected() {
        return connected;
    }

    /** Publishes a retained message when that is possible; a later one of the same topic goes in its place. */
    public void announce(Message message) {
        outgoing.put(message.topic(), new Letter(message, true));
    }

    /** Publishes a message now or not at all. @return false when the broker is away or too much is waiting */
    public boolean send(Message message) {
        return connected
                && outgoing.put(message.topic() + "#" + sent.incrementAndGet(), new Letter(message, false));
    }

    /** Gives what is waiting a moment to go out, then says goodbye. */
    @Override
    public void close() {
        closing.countDown();
        try {
            thread.join(3_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        thread.interrupt();
    }

    private void run() {
        try {
            while (closing.getCount() > 0 || connected && !outgoing.isEmpty()) {
                long waitMs = step(closing.getCount() > 0 ? IDLE_MS : 0);
                closing.await(waitMs, TimeUnit.MILLISECONDS);
            }
        } catch (InterruptedException e) {
            LOG.debug("feed interrupted");
        } finally {
            connected = false;
            connection.close();
        }
    }

    /**
     * One step, which a test takes by hand: connects, or publishes what has waited longest, or finds the connection lost.
     *
     * @param idleMs for how long it waits for something to publish
     * @return how long to wait before the next, ms
     */
    long step(long idleMs) throws InterruptedException {
        if (!connected) {
            return connect();
        }
        Map.Entry<String, Letter> next = outgoing.take(idleMs);
        String why = next == null ? lostBecause : publish(next.getKey(), next.getValue());
        return why == null ? 0 : lose(why);
    }

    private long connect() {
        try {
            lostBecause = null;
            connection.connect(new Incoming());
            connection.subscribe(filters);
            connected = true;
            connectedNs = nanoTime.getAsLong();
            LOG.info("connected to the broker");
            listener.connected();
            return 0;
        } catch (IOException e) {
            connection.abandon();
            return failed(e.getMessage());
        }
    }

    private long lose(String why) {
        connected = false;
        connection.abandon();
        if (nanoTime.getAsLong() - connectedNs > HELD_LONG_ENOUGH_NS) {
            backoff.succeeded();
        }
        return failed(why);
    }

    private String publish(String subject, Letter letter) {
        try {
            connection.publish(letter.message(), letter.retained());
            return null;
        } catch (IOException e) {
            if (letter.retained()) { // a command that comes late does harm; what is kept is said again
                outgoing.putBack(subject, letter);
            }
            return e.getMessage();
        }
    }

    private long failed(String why) {
        Duration wait = backoff.failed();
        if (backoff.failures() == 1) {
            LOG.warn("no broker ({}); trying again until there is one", why);
        } else {
            LOG.debug("no broker ({}), try {}", why, backoff.failures());
        }
        return wait.toMillis();
    }

    private final class Incoming implements Connection.Receiver {
        @Override
        public void message(Message message) {
            listener.message(message);
        }

        @Override
        public void lost(String why) {
            lostBecause = "connection lost: " + why;
        }
    }
}
