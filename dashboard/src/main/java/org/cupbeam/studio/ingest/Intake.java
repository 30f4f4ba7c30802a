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
 * for, and then, never before, says how far each journal is kept. While another host does, it looks on.
 */
public final class Intake implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Intake.class);
    private static final int MOST_WAITING = 8_192;
    private static final int MOST_WAITING_BYTES = 4 << 20;
    private static final int LARGEST_BATCH = 1_000;
    private static final long FULL_WAIT_MS = 5_000;
    private static final long IDLE_MS = 200;
    private static final long RETRY_MS = 1_000;

    private final Turns turns;
    private final Consumer<Message> announce;
    private final Consumer<List<Arrival>> committed;
    private final Patience patience;
    private final Clock wall;
    private final LongSupplier nanoTime;
    private final Recent recent = new Recent();
    private final Map<Topics, Source> current = new LinkedHashMap<>();
    private final Inbox inbox = new Inbox(MOST_WAITING, MOST_WAITING_BYTES, FULL_WAIT_MS);
    private final BlockingQueue<Source> heardOf = new ArrayBlockingQueue<>(256);
    private final AtomicBoolean sayAll = new AtomicBoolean();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Counts counts = new Counts();
    private final Keeping keeping;
    private final Thread thread = new Thread(this::run, "intake");
    private final List<Message> unacknowledged = new ArrayList<>();
    private EventLog log;
    private Sorter sorter;

    /**
     * @param announce  publishes a retained message when it can
     * @param committed is told of what was kept, and must not take long
     */
    public Intake(Turns turns, Patience patience, Consumer<Message> announce, Consumer<List<Arrival>> committed, Clock wall,
                  LongSupplier nanoTime) {
        this.turns = turns;
        this.patience = patience;
        this.announce = announce;
        this.committed = committed;
        this.wall = wall;
        this.nanoTime = nanoTime;
        this.keeping = new Keeping(closing, nanoTime);
    }

    public Intake start() {
        thread.setDaemon(true);
        thread.start();
        return this;
    }

    /** Takes an event's message in; where more has come than can be kept it waits for a while. */
    public void offer(Message message) {
        inbox.offer(message);
    }

    /** How it is; from any thread. */
    Vitals vitals(boolean reachesBroker) {
        return counts.now(reachesBroker, turns.log() != null, keeping.trouble(), inbox.size());
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
            while (closing.getCount() > 0 || inbox.size() > 0) {
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
        } catch (NotOurTurn e) {
            LOG.info("{}; what was about to be kept here is kept there", e.getMessage());
        } catch (RuntimeException e) {
            LOG.error("events were not taken in; their lanes will send them again", e);
            closing.await(RETRY_MS, TimeUnit.MILLISECONDS);
        }
    }

    /** One step, which a test takes by hand: keeps what has come. @return false where nothing came within the wait */
    boolean step(long idleMs) throws InterruptedException {
        EventLog now = turns.log();
        if (now == null) {
            return watch(idleMs);
        }
        if (now != log) {
            begin(now);
        }
        return keepWhatCame(idleMs);
    }

    /** While another host keeps what comes: only remembers it for a while, since that host may die before it has. */
    private boolean watch(long idleMs) throws InterruptedException {
        log = null;
        acknowledge();
        List<Message> messages = inbox.take(LARGEST_BATCH, idleMs);
        messages.forEach(recent::add);
        messages.forEach(each -> each.taken().run());
        for (Source each = heardOf.poll(); each != null; each = heardOf.poll()) {
            if (current.size() < Sorter.MOST_SOURCES) {
                current.put(lane(each), each);
            }
        }
        return !messages.isEmpty();
    }

    /** A turn of this host's, from what is kept by now. */
    private void begin(EventLog now) {
        readAgain(now);
        List<EventLog.Kept> kept = now.kept();
        Map<Topics, Source> heard = new LinkedHashMap<>(current);
        current.clear();
        kept.forEach(each -> current.put(lane(each.source()), each.source()));
        current.putAll(heard);
        sorter = new Sorter(kept, now::upTo, patience, wall, nanoTime);
        recent.takeAll().forEach(sorter::take);
        log = now;
        sayAll.set(true);
    }

    /** Whatever becomes of that, what comes now is kept. */
    private static void readAgain(EventLog from) {
        try {
            from.readAgain();
        } catch (NotOurTurn e) {
            throw e;
        } catch (RuntimeException e) {
            LOG.warn("what an earlier version did not understand was not read again ({}); it is kept, and tried at the next start",
                    e.toString());
        }
    }

    private boolean keepWhatCame(long idleMs) throws InterruptedException {
        List<Message> messages = inbox.take(LARGEST_BATCH, idleMs);
        messages.forEach(sorter::take);
        messages.stream().filter(each -> each.taken() != Message.NOBODY_WAITS).forEach(unacknowledged::add);
        for (Source each = heardOf.poll(); each != null; each = heardOf.poll()) {
            sorter.heardOf(each);
        }
        sorter.giveUpOverdue();
        long letGo = inbox.droppedSince();
        if (letGo > 0) {
            counts.letGo(letGo);
            LOG.warn("{} events let go, more came than could be kept; their lanes will send them again", letGo);
        }
        Batch batch = sorter.batch();
        if (!batch.isEmpty()) {
            long beganNs = nanoTime.getAsLong();
            keeping.keep(log, batch);
            counts.kept(batch, nanoTime.getAsLong() - beganNs);
            if (!batch.arrivals().isEmpty()) {
                committed.accept(batch.arrivals());
            }
        }
        compare();
        if (!sorter.holdsAny()) {
            acknowledge();
        }
        sayHowFar();
        return !messages.isEmpty();
    }

    /** Everything that came is kept, and nothing is held that waits for something else. */
    private void acknowledge() {
        unacknowledged.forEach(each -> each.taken().run());
        unacknowledged.clear();
    }

    /** What came again is the same event by its name; where it says something else, that is to be known. */
    private void compare() {
        for (Arrival each : sorter.again()) {
            if (log.differs(each)) {
                sorter.differs(each);
            }
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
