package org.cupbeam.studio.ingest;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
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
    private final Latest<Letter> outgoing = new Latest<>(MOST_WAITING);
    private final AtomicLong sent = new AtomicLong();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "feed");
    private volatile boolean connected;
    private volatile String lostBecause;

    public Feed(Connection connection, List<String> filters, Listener listener, Backoff backoff) {
        this.connection = connection;
        this.filters = List.copyOf(filters);
        this.listener = listener;
        this.backoff = backoff;
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
            while (closing.getCount() > 0) {
                if (connect()) {
                    serve();
                }
            }
        } catch (InterruptedException e) {
            LOG.debug("feed interrupted");
        } finally {
            connected = false;
            connection.close();
        }
    }

    private boolean connect() throws InterruptedException {
        try {
            lostBecause = null;
            connection.connect(new Incoming());
            connection.subscribe(filters);
            connected = true;
            LOG.info("connected to the broker");
            listener.connected();
            return true;
        } catch (IOException e) {
            connection.abandon();
            pause(e.getMessage());
            return false;
        }
    }

    private void serve() throws InterruptedException {
        long sinceNs = System.nanoTime();
        String why = null;
        while (why == null) {
            boolean last = closing.getCount() == 0;
            Map.Entry<String, Letter> next = outgoing.take(last ? 1 : IDLE_MS);
            if (next == null && last) {
                return;
            }
            why = next == null ? lostBecause : publish(next.getKey(), next.getValue());
        }
        connected = false;
        connection.abandon();
        if (System.nanoTime() - sinceNs > HELD_LONG_ENOUGH_NS) {
            backoff.succeeded();
        }
        pause(why);
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

    private void pause(String why) throws InterruptedException {
        Duration wait = backoff.failed();
        if (backoff.failures() == 1) {
            LOG.warn("no broker ({}); trying again until there is one", why);
        } else {
            LOG.debug("no broker ({}), try {}", why, backoff.failures());
        }
        closing.await(wait.toMillis(), TimeUnit.MILLISECONDS);
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
