package org.cupbeam.studio.ingest;

import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.cupbeam.event.Source;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.cupbeam.event.Topics;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The thread that keeps events: takes what has come, puts it in order, commits it in batches as large as the rush asks
 * for, and then, never before, says how far each journal is kept.
 */
public final class Intake implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Intake.class);
    private static final int MOST_WAITING = 8_192;
    private static final int LARGEST_BATCH = 1_000;
    private static final long FULL_WAIT_MS = 5_000;
    private static final long IDLE_MS = 200;
    private static final long RETRY_MS = 1_000;

    private final EventLog log;
    private final Consumer<Message> announce;
    private final Consumer<List<Arrival>> committed;
    private final Sorter sorter;
    private final Map<Topics, Source> current = new LinkedHashMap<>();
    private final BlockingQueue<Message> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final BlockingQueue<Source> heardOf = new ArrayBlockingQueue<>(256);
    private final AtomicBoolean sayAll = new AtomicBoolean();
    private final AtomicLong dropped = new AtomicLong();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "intake");

    /**
     * @param announce  publishes a retained message when it can
     * @param committed is told of what was kept, and must not take long
     */
    public Intake(EventLog log, Consumer<Message> announce, Consumer<List<Arrival>> committed, Clock wall,
                  LongSupplier nanoTime) {
        this.log = log;
        this.announce = announce;
        this.committed = committed;
        List<EventLog.Kept> kept = log.kept();
        kept.forEach(each -> current.put(lane(each.source()), each.source()));
        this.sorter = new Sorter(kept, wall, nanoTime);
    }

    public Intake start() {
        thread.setDaemon(true);
        thread.start();
        return this;
    }

    /**
     * Puts an event's message in the queue. Where the queue is full it waits, so that the broker slows its senders
     * down, but not so long that the connection would be taken for dead; then it lets the message go, since its lane
     * will send it again.
     */
    public void offer(Message message) {
        try {
            if (!waiting.offer(message, FULL_WAIT_MS, TimeUnit.MILLISECONDS)) {
                dropped.incrementAndGet();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** A lane has said which journal it writes: it is to be told how far that one is kept. */
    public void heardOf(Source source) {
        heardOf.offer(source);
    }

    /** The broker may have forgotten what it was told: say of every lane how far it is kept. */
    public void sayAllAgain() {
        sayAll.set(true);
    }

    /** Commits what is waiting, as far as that goes within two seconds, and stops. */
    @Override
    public void close() {
        closing.countDown();
        try {
            thread.join(2_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        thread.interrupt();
    }

    private void run() {
        try {
            while (closing.getCount() > 0 || !waiting.isEmpty()) {
                guardedStep();
            }
        } catch (InterruptedException e) {
            LOG.debug("intake interrupted");
        }
    }

    /** A fault of ours must not end the thread that keeps events, nor spin it. */
    private void guardedStep() throws InterruptedException {
        try {
            step(closing.getCount() > 0 ? IDLE_MS : 0);
        } catch (RuntimeException e) {
            LOG.error("events were not taken in; their lanes will send them again", e);
            closing.await(RETRY_MS, TimeUnit.MILLISECONDS);
        }
    }

    /** One step, which a test takes by hand: keeps what has come. @return false where nothing came within the wait */
    boolean step(long idleMs) throws InterruptedException {
        Message first = waiting.poll(idleMs, TimeUnit.MILLISECONDS);
        if (first != null) {
            List<Message> messages = new ArrayList<>();
            messages.add(first);
            waiting.drainTo(messages, LARGEST_BATCH - 1);
            messages.forEach(sorter::take);
        }
        for (Source each = heardOf.poll(); each != null; each = heardOf.poll()) {
            sorter.heardOf(each);
        }
        sorter.giveUpOverdue();
        long letGo = dropped.getAndSet(0);
        if (letGo > 0) {
            LOG.warn("{} events let go, more came than could be kept; their lanes will send them again", letGo);
        }
        Batch batch = sorter.batch();
        if (!batch.isEmpty()) {
            keep(batch);
        }
        sayHowFar();
        return first != null;
    }

    private void keep(Batch batch) throws InterruptedException {
        while (!tryToKeep(batch)) {
            // Nothing is let go: the lanes' own journals hold what cannot be taken in meanwhile.
            if (closing.await(RETRY_MS, TimeUnit.MILLISECONDS)) {
                throw new InterruptedException("closed while the store could not keep anything");
            }
        }
        if (!batch.arrivals().isEmpty()) {
            committed.accept(batch.arrivals());
        }
    }

    private boolean tryToKeep(Batch batch) {
        try {
            log.commit(batch);
            return true;
        } catch (RuntimeException e) {
            LOG.warn("a batch of {} events was not kept ({}); one by one", batch.arrivals().size(), e.toString());
            return oneByOne(batch);
        }
    }

    /** So that one event that cannot be kept as it is does not hold up the others. */
    private boolean oneByOne(Batch batch) {
        try {
            log.commit(new Batch(List.of(), List.of(), batch.deadLetters()));
            log.commit(new Batch(List.of(), batch.missing(), List.of()));
            for (Arrival each : batch.arrivals()) {
                one(each);
            }
            return true;
        } catch (RuntimeException e) {
            LOG.error("the store keeps nothing at present ({}); trying again", e.toString());
            return false;
        }
    }

    private void one(Arrival arrival) {
        try {
            log.commit(new Batch(List.of(arrival), List.of(), List.of()));
        } catch (RuntimeException e) {
            log.commit(new Batch(List.of(arrival.onlyKept(e.toString())), List.of(), List.of()));
            LOG.error("{} event {} kept, but not understood", arrival.source(), arrival.sequence(), e);
        }
    }

    private void sayHowFar() {
        for (Source each : sorter.touched()) {
            current.put(lane(each), each);
            say(each);
        }
        if (sayAll.getAndSet(false)) {
            current.values().forEach(this::say);
        }
    }

    private void say(Source source) {
        byte[] payload = StoredJson.encode(new Stored(source.journal(), sorter.upTo(source)));
        announce.accept(Message.of(lane(source).stored(), payload));
    }

    private static Topics lane(Source source) {
        return new Topics(source.studio(), source.lane());
    }
}
