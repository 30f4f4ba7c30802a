package org.cupbeam.lane;

import java.nio.file.Path;
import java.time.Instant;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.journal.Ahead;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Worker;
import org.cupbeam.link.Link;
import org.cupbeam.link.LinkOptions;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A lane at work: its loop, its journal and its link, each on a thread of its own.
 *
 * <p>{@link #open} takes up the play where the journal left it; {@link #start} lets edges in; {@link #close} ends it in
 * good order.
 */
public final class Lane implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Lane.class);
    private static final long GOODBYE_MS = 1_200;
    private static final long LOOK_NS = 1_000_000_000;

    private final Journal<Told> journal;
    private final LaneAgent agent;
    private final Link link;
    private final double pace;
    private final AtomicBoolean closed = new AtomicBoolean();
    private volatile Worker loop;
    private volatile long lastStepNs;
    private Worker watchdog;
    private volatile Runnable whenHung = () -> { };
    private volatile Runnable whileWell = () -> { };
    private EdgeSource source;

    private Lane(LaneSettings settings, Surroundings around, LinkOptions broker, Journal<Told> opened)
            throws JournalException {
        journal = opened;
        pace = around.pace();
        Line line = new Line();
        agent = new LaneAgent(settings, opened, around, broker == null ? Outlet.NONE : line, this::wake);
        link = broker == null ? null : new Link(broker, settings.topics(), around.boot(), opened, System::nanoTime,
                new SplittableRandom(), agent::hear);
        line.link = link;
        if (settings.start() != null) {
            agent.play(settings.start());
        }
    }

    /**
     * Loads much of what {@link #open} needs, while the caller is still reading files: a lane that lost its power is to
     * be back at once. Harmless, and returns at once.
     */
    public static void prepare(Path journal) {
        Thread ahead = new Thread(() -> Ahead.of(journal), "ahead");
        ahead.setDaemon(true);
        ahead.start();
    }

    /**
     * A lane as it was left; nothing runs yet.
     *
     * @param broker the studio's; null for a lane that keeps its word to itself
     * @throws JournalException for a journal that cannot be had, with what would do
     */
    public static Lane open(LaneSettings settings, Surroundings around, LinkOptions broker) throws JournalException {
        ToldCodec.rehearse(); // while SQLite is still being loaded, if that was asked for
        Instant now = around.wall().instant();
        Journal<Told> journal = Journal.open(settings.journal(), settings.topics().studio(), settings.topics().lane(),
                new ToldCodec(), now);
        try {
            return new Lane(settings, around, broker, journal);
        } catch (JournalException | RuntimeException e) {
            journal.close();
            throw e;
        }
    }

    /** What to do when its loop does not come round for ten seconds, which only a fault of the program can bring about. */
    public void whenHung(Runnable cure) {
        whenHung = cure;
    }

    /** What to do about each second, on a thread beside, for as long as its loop comes round. */
    public void whileWell(Runnable sign) {
        whileWell = sign;
    }

    /** Lets it run: edges come from the source, which it closes in the end. Called once. */
    public void start(EdgeSource edges) {
        source = edges;
        agent.begin(edges);
        agent.scribe().start();
        lastStepNs = System.nanoTime();
        loop = Worker.start("lane", this::step, () -> (long) (agent.idleNs() / pace));
        watchdog = Worker.start("watchdog", new Watchdog(System::nanoTime, () -> lastStepNs, this::hangs,
                () -> whileWell.run())::doWork, LOOK_NS);
        edges.start(agent.edges());
        if (link != null) {
            link.start();
        }
    }

    private int step() {
        lastStepNs = System.nanoTime();
        return agent.doWork();
    }

    private void hangs() {
        LOG.error("the lane's loop does not come round any more; please report this, with the threads as they stand");
        whenHung.run();
    }

    /** Whose putt is next, and from where, for whoever simulates it. Any thread. */
    public UpNext upNext() {
        return agent.upNext();
    }

    /** The journal's id. */
    public String journal() {
        return journal.id();
    }

    /** Why it cannot speak to the broker, in words; null when it can, or need not. */
    public String brokerTrouble() {
        return link == null ? null : link.trouble();
    }

    private void wake() {
        Worker running = loop;
        if (running != null) {
            running.wake();
        }
    }

    /**
     * Ends in good order, within 2 s: no more edges, all that happened on the disk, the studio told. What was still
     * rolling is not made an attempt.
     */
    @Override
    public void close() {
        if (closed.getAndSet(true)) {
            return;
        }
        Worker running = loop;
        if (running != null) {
            watchdog.close();
            source.close();
            running.close();
            agent.doWork();
        }
        agent.scribe().close();
        if (link != null) {
            leave();
        }
        try {
            journal.close();
        } catch (JournalException e) {
            LOG.error("{}", e.getMessage());
        }
    }

    /** A broker that does not answer is not waited for any longer than this. */
    private void leave() {
        Thread goodbye = new Thread(link::close, "goodbye");
        goodbye.setDaemon(true);
        goodbye.start();
        try {
            TimeUnit.MILLISECONDS.timedJoin(goodbye, GOODBYE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The link, which hears the lane's commands, and so is there a moment after the lane. */
    private static final class Line implements Outlet {
        private Link link;

        @Override
        public void written() {
            link.wake();
        }

        @Override
        public void score(Score score) {
            link.score(score);
        }

        @Override
        public void health(Health.Report report) {
            link.health(report);
        }

        @Override
        public void answer(Answer answer) {
            link.answer(answer);
        }
    }
}
