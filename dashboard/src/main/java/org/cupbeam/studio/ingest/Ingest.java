package org.cupbeam.studio.ingest;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Source;
import org.cupbeam.event.Topics;
import org.cupbeam.event.Topics.Kind;

/** The host's side of the broker, whole: events into the log, news to its reader, commands out. */
public final class Ingest implements AutoCloseable {
    private static final Duration FIRST_WAIT = Duration.ofMillis(250);
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(30);
    private static final List<String> FILTERS = Stream.of(Kind.EVENT, Kind.SCORE, Kind.HEALTH, Kind.ANSWER)
            .map(kind -> Topics.everyLane("+", kind)).toList();

    private final Feed feed;
    private final Intake intake;
    private final News news;

    /**
     * @param reader    is told of scores, health and answers
     * @param committed is told of the events that were kept
     */
    public Ingest(Connection connection, EventLog log, News.Reader reader, Consumer<List<Arrival>> committed,
                  Clock wall, LongSupplier nanoTime, RandomGenerator random) {
        this(connection, Turns.always(log), Patience.WITH_LANES, reader, committed, wall, nanoTime, random);
    }

    /**
     * The same, where other hosts may keep the events.
     *
     * @param turns    which of them does
     * @param patience with what is missing
     */
    public Ingest(Connection connection, Turns turns, Patience patience, News.Reader reader, Consumer<List<Arrival>> committed,
                  Clock wall, LongSupplier nanoTime, RandomGenerator random) {
        Backoff backoff = new Backoff(FIRST_WAIT, LONGEST_WAIT, random);
        this.feed = new Feed(connection, FILTERS, new Router(), backoff, nanoTime);
        this.intake = new Intake(turns, patience, feed::announce, committed, wall, nanoTime);
        this.news = new News(new Listening(reader), nanoTime);
    }

    public Ingest start() {
        intake.start();
        news.start();
        feed.start();
        return this;
    }

    /** Its three threads' work, for whoever takes their steps by hand in place of {@link #start}. */
    Feed feed() {
        return feed;
    }

    Intake intake() {
        return intake;
    }

    News news() {
        return news;
    }

    /** Whether the broker can be reached at present. */
    public boolean connected() {
        return feed.connected();
    }

    /** How it is, for whoever operates the host. */
    public Vitals vitals() {
        return intake.vitals(feed.connected());
    }

    /** Sends a command to a lane, now or not at all. @return false when it cannot go out */
    public boolean send(Topics lane, Command command) {
        return feed.send(Message.of(lane.command(), CommandJson.encode(command)));
    }

    /** Keeps what has come, says so, and lets go of the broker. */
    @Override
    public void close() {
        intake.close();
        feed.close();
        news.close();
    }

    private final class Router implements Feed.Listener {
        @Override
        public void message(Message message) {
            Topics.Address from = Topics.parse(message.topic());
            if (from == null) {
                message.taken().run();
                return;
            }
            if (from.kind() == Kind.EVENT) {
                intake.offer(message);
            } else {
                news.offer(message, from.kind());
                message.taken().run();
            }
        }

        @Override
        public void connected() {
            intake.sayAllAgain();
        }
    }

    private final class Listening implements News.Reader {
        private final News.Reader reader;

        Listening(News.Reader reader) {
            this.reader = reader;
        }

        @Override
        public void score(Topics lane, Score score) {
            reader.score(lane, score);
        }

        @Override
        public void health(Topics lane, Health health) {
            if (health.report() != null) {
                intake.heardOf(new Source(lane.studio(), lane.lane(), health.report().journal()));
            }
            reader.health(lane, health);
        }

        @Override
        public void answer(Topics lane, Answer answer) {
            reader.answer(lane, answer);
        }
    }
}
