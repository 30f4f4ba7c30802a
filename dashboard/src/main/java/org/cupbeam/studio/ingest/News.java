package org.cupbeam.studio.ingest;

import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Complaints;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Topics;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The thread that hands on what lanes say of the present: scores, health, answers. Of a score or health that nobody has
 * looked at yet only the latest matters; answers are handed on one by one.
 */
public final class News implements AutoCloseable {
    /** Who wants to know; called on one thread, and must not take long. */
    public interface Reader {
        void score(Topics lane, Score score);

        void health(Topics lane, Health health);

        void answer(Topics lane, Answer answer);
    }

    private static final Logger LOG = LoggerFactory.getLogger(News.class);
    private static final int MOST_WAITING = 2_048;
    private static final long MOST_BYTES = 4 << 20;
    private static final long IDLE_MS = 200;
    private static final long MINUTE_NS = 60_000_000_000L;

    private final Latest<Message> waiting = new Latest<>(MOST_WAITING, MOST_BYTES, each -> each.payload().length);
    private final AtomicLong letGo = new AtomicLong();
    private final AtomicLong answers = new AtomicLong();
    private final Reader reader;
    private final LongSupplier nanoTime;
    private final Consumer<String> warn;
    private final Complaints complaints;
    private final Thread thread = new Thread(this::run, "news");
    private volatile boolean closed;
    private long saidNs;

    /** @param nanoTime a monotonic clock, ns */
    public News(Reader reader, LongSupplier nanoTime) {
        this(reader, nanoTime, LOG::warn);
    }

    /** @param warn takes a line */
    News(Reader reader, LongSupplier nanoTime, Consumer<String> warn) {
        this.reader = reader;
        this.nanoTime = nanoTime;
        this.warn = warn;
        this.complaints = new Complaints(nanoTime, warn);
        this.saidNs = nanoTime.getAsLong() - MINUTE_NS;
    }

    public News start() {
        thread.setDaemon(true);
        thread.start();
        return this;
    }

    /** Puts a message in; returns at once. */
    public void offer(Message message, Topics.Kind kind) {
        String subject = kind == Topics.Kind.ANSWER
                ? message.topic() + "#" + answers.incrementAndGet() : message.topic();
        if (!waiting.put(subject, message)) {
            letGo.incrementAndGet();
        }
    }

    @Override
    public void close() {
        closed = true;
        thread.interrupt();
    }

    private void run() {
        try {
            while (!closed) {
                step(IDLE_MS);
            }
        } catch (InterruptedException e) {
            LOG.debug("news interrupted");
        }
    }

    /** One step, which a test takes by hand: hands one message on. @return false where none came within the wait */
    boolean step(long idleMs) throws InterruptedException {
        Map.Entry<String, Message> next = waiting.take(idleMs);
        complaints.look();
        sayWhatWasLetGo();
        if (next != null) {
            handOn(next.getValue());
        }
        return next != null;
    }

    /** Once a minute: what makes too much of it lasts, as a rule. */
    private void sayWhatWasLetGo() {
        long now = nanoTime.getAsLong();
        if (letGo.get() > 0 && now >= saidNs + MINUTE_NS) {
            saidNs = now;
            warn.accept(letGo.getAndSet(0) + " scores, health and answers let go, more came than could be handed on; boards show the next ones");
        }
    }

    /** Reads one message and tells of it. Whatever is wrong with it ends here. */
    void handOn(Message message) {
        try {
            if (message.tooLarge()) {
                complaints.about(message.topic(), message.length() + " bytes; at most " + Message.LIMIT_BYTES + " are read");
                return;
            }
            tell(Topics.parse(message.topic()), message.payload());
        } catch (BadMessage e) {
            complaints.about(message.topic(), e.getMessage());
        } catch (RuntimeException e) {
            LOG.error("{}: not handed on", message.topic(), e);
        }
    }

    private void tell(Topics.Address from, byte[] payload) throws BadMessage {
        switch (from.kind()) {
            case SCORE -> score(from.lane(), ScoreJson.decode(payload));
            case HEALTH -> reader.health(from.lane(), HealthJson.decode(payload));
            case ANSWER -> reader.answer(from.lane(), CommandJson.decodeAnswer(payload));
            case EVENT, COMMAND, STORED -> LOG.debug("{} is not news", from.kind());
        }
    }

    /** A score of one lane under another's topic would be drawn on the wrong board. */
    private void score(Topics lane, Score score) {
        if (lane.studio().equals(score.studio()) && lane.lane().equals(score.lane())) {
            reader.score(lane, score);
        } else {
            complaints.about(lane.score(), "says that it is of " + score.studio() + "/" + score.lane()
                    + ", and is ignored; give each lane a name of its own");
        }
    }
}
