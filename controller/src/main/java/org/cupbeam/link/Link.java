package org.cupbeam.link;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;
import org.cupbeam.journal.Worker;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A lane's line to the studio: sends what the outbox holds, the score and the health, hears commands, and keeps trying
 * whatever becomes of the broker. Everything happens in {@link #doWork}, on one thread; what others call returns at
 * once.
 */
public final class Link implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Link.class);
    private static final long CONNECT_NS = TimeUnit.SECONDS.toNanos(15);
    private static final long GOODBYE_NS = TimeUnit.SECONDS.toNanos(3);
    private static final long SETTLED_NS = TimeUnit.SECONDS.toNanos(30);
    private static final long SLEEP_NS = TimeUnit.MILLISECONDS.toNanos(200);
    private static final int HEARD_AT_ONCE = 64;

    private final Topics topics;
    private final String boot;
    private final Outbox outbox;
    private final LongSupplier clockNs;
    private final Wire wire;
    private final Post post = new Post();
    private final Window window = new Window();
    private final Sending sending;
    private final Incoming incoming;
    private final Backoff backoff;
    private final CountDownLatch left = new CountDownLatch(1);
    private volatile Phase phase = Phase.AWAY;
    private volatile boolean leaving;
    private volatile long connection;
    private volatile String trouble = "not connected yet";
    private volatile String unreadable;
    private volatile Worker worker;
    private long phaseUntilNs;
    private long onlineSinceNs;

    /**
     * @param boot     as in events
     * @param clockNs  a monotonic clock, ns
     * @param commands takes a command into the lane's queue; false when that is full
     */
    public Link(LinkOptions options, Topics topics, String boot, Outbox outbox, LongSupplier clockNs,
                RandomGenerator random, Predicate<Command> commands) {
        this(wake -> new PahoWire(options, "cupbeam-" + topics.studio() + "-" + topics.lane(), wake), topics, boot,
                outbox, clockNs, random, commands);
    }

    Link(Wire.Maker maker, Topics topics, String boot, Outbox outbox, LongSupplier clockNs, RandomGenerator random,
         Predicate<Command> commands) {
        this.topics = topics;
        this.boot = boot;
        this.outbox = outbox;
        this.clockNs = clockNs;
        this.wire = maker.make(this::wake);
        this.sending = new Sending(outbox);
        this.incoming = new Incoming(topics, outbox, commands, post);
        this.backoff = new Backoff(random);
        this.phaseUntilNs = clockNs.getAsLong();
    }

    /** The score as it is now, on the disk already; only the latest goes out. From any thread. */
    public void score(Score score) {
        post.score(score);
        wake();
    }

    /** The health as it is now. Nothing is connected before there is one. From any thread. */
    public void health(Health.Report report) {
        post.report(report);
        wake();
    }

    /** An answer to a command. From any thread. */
    public void answer(Answer answer) {
        post.answer(answer);
        wake();
    }

    /** There is something new in the outbox. From any thread. */
    public void wake() {
        Worker running = worker;
        if (running != null) {
            running.wake();
        }
    }

    /** Whether the broker is there, and hears and is heard. */
    public boolean online() {
        return phase == Phase.ONLINE;
    }

    /** The number of the latest connection; 0 before the first. */
    public long connection() {
        return connection;
    }

    /** Why it is not online, or sends no events though it is, in words for a person; null when all is well. */
    public String trouble() {
        return online() ? unreadable : trouble;
    }

    /** Messages that made no sense, or came when too many waited: none of them acted on. */
    public long refused() {
        return incoming.refused() + wire.overrun();
    }

    /** Takes its steps on a thread of its own from now on. */
    public void start() {
        worker = Worker.start("link", this::doWork, SLEEP_NS);
    }

    /** One step; returns how much there was to do. */
    public int doWork() {
        long now = clockNs.getAsLong();
        int heard = hear(now);
        return heard + switch (phase) {
            case AWAY -> leaving ? leave() : now - phaseUntilNs >= 0 && post.latestReport() != null ? connect(now) : 0;
            case CONNECTING, SUBSCRIBING -> leaving ? leave() : isLate(now) ? fail("no answer in time", now) : 0;
            case ONLINE -> leaving ? sayGoodbye(now) : online(now);
            case LEAVING -> window.has(Window.Kind.GOODBYE) && !isLate(now) ? 0 : leave();
            case LEFT -> 0;
        };
    }

    private boolean isLate(long now) {
        return now - phaseUntilNs >= 0;
    }

    private int connect(long now) {
        try {
            connection = outbox.nextConnection();
        } catch (JournalException e) {
            connection++; // a journal that cannot be written must not keep the lane from saying so
        }
        phase = Phase.CONNECTING;
        phaseUntilNs = now + CONNECT_NS;
        wire.connect(new Wire.Message(topics.health(), health(Health.State.LOST, null), true));
        return 1;
    }

    private int hear(long now) {
        int heard = 0;
        for (Wire.News news; heard < HEARD_AT_ONCE && (news = wire.next()) != null; heard++) {
            if (news instanceof Wire.News.Connected && phase == Phase.CONNECTING) {
                phase = Phase.SUBSCRIBING;
                wire.subscribe(List.of(topics.command(), topics.stored(), topics.health()));
            } else if (news instanceof Wire.News.Subscribed && phase == Phase.SUBSCRIBING) {
                begin(now);
            } else if (news instanceof Wire.News.Acknowledged acknowledged) {
                window.acknowledged(acknowledged.tag());
            } else if (news instanceof Wire.News.Received received) {
                incoming.message(received.message());
            } else if (news instanceof Wire.News.Failed failed && phase != Phase.AWAY && phase != Phase.LEFT) {
                fail(failed.reason(), now);
            }
        }
        return heard;
    }

    private void begin(long now) {
        phase = Phase.ONLINE;
        onlineSinceNs = now;
        sending.begin(now);
        post.sayAllAgain();
        LOG.info("connected to the broker, connection {}", connection);
    }

    private int fail(String reason, long now) {
        wire.drop();
        post.answerAgain(window.clear());
        if (phase == Phase.ONLINE && now - onlineSinceNs >= SETTLED_NS) {
            backoff.reset();
        }
        long wait = backoff.nextNs();
        if (phase == Phase.ONLINE || !reason.equals(trouble)) {
            LOG.warn("no connection to the broker: {}; next try in {} s", reason, Math.round(wait / 1e8) / 10.0);
        }
        trouble = reason;
        phase = Phase.AWAY;
        phaseUntilNs = now + wait;
        return 1;
    }

    private int online(long now) {
        if (window.isStuck(now)) {
            return fail("the broker does not acknowledge", now);
        }
        int sent = sendHealth(now);
        try {
            for (Outbox.Row row : sending.next(window.eventRoom(), now)) {
                send(window.add(Window.Kind.EVENT, now), topics.event(), row.payload(), false);
                sent++;
            }
            unreadable = null;
        } catch (JournalException e) {
            if (unreadable == null) {
                LOG.error("{}; no event can be sent", e.getMessage());
            }
            unreadable = e.getMessage();
        }
        for (Answer answer; window.answerRoom() && (answer = post.takeAnswer()) != null; sent++) {
            send(window.add(answer, now), topics.answer(), CommandJson.encode(answer), false);
        }
        Score score = window.has(Window.Kind.SCORE) ? null : post.takeScore();
        if (score != null) {
            send(window.add(Window.Kind.SCORE, now), topics.score(), ScoreJson.encode(score), true);
            sent++;
        }
        return sent;
    }

    private int sendHealth(long now) {
        Health.Report report = window.has(Window.Kind.HEALTH) ? null : post.takeReport();
        if (report == null) {
            return 0;
        }
        send(window.add(Window.Kind.HEALTH, now), topics.health(), health(Health.State.ONLINE, report), true);
        return 1;
    }

    private void send(long tag, String topic, byte[] payload, boolean retained) {
        wire.publish(tag, new Wire.Message(topic, payload, retained));
    }

    private byte[] health(Health.State state, Health.Report report) {
        return HealthJson.encode(new Health(state, connection, boot, report));
    }

    private int sayGoodbye(long now) {
        phase = Phase.LEAVING;
        phaseUntilNs = now + GOODBYE_NS;
        send(window.add(Window.Kind.GOODBYE, now), topics.health(),
                health(Health.State.OFFLINE, post.latestReport()), true);
        return 1;
    }

    private int leave() {
        wire.leave();
        phase = Phase.LEFT;
        trouble = "closed";
        left.countDown();
        return 1;
    }

    /** Asks it to say that the lane goes offline, and to leave the broker; the steps that follow do. */
    void askToLeave() {
        leaving = true;
        wake();
    }

    /** Says that the lane goes offline, waits until the broker has taken that, for 5 s at most, and leaves. */
    @Override
    public void close() {
        askToLeave();
        Worker running = worker;
        if (running != null) {
            try {
                if (!left.await(5, TimeUnit.SECONDS)) {
                    LOG.warn("could not take leave of the broker in time");
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            running.close();
        }
        wire.close();
    }
}
