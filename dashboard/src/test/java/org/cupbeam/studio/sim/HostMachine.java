package org.cupbeam.studio.sim;

import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ingest.Connection;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.ingest.Ingest;
import org.cupbeam.studio.ingest.IngestByHand;
import org.cupbeam.studio.ingest.Message;
import org.cupbeam.studio.ingest.News;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.upkeep.Checkup;
import org.cupbeam.studio.web.LiveLanes;
import org.cupbeam.studio.web.Shown;

/** The studio's host: its own ingest, store and boards, on a simulated machine. */
final class HostMachine extends Machine {
    private final Network network;
    private final Broker broker;
    private final Function<Store, UnaryOperator<EventLog>> keptBy;
    private final Map<String, Answer> answers = new HashMap<>();
    private Store store;
    private LiveLanes boards;
    private Ingest ingest;
    private Line line;
    private Agent feed;
    private Agent intake;
    private Agent news;
    private long offByNs;

    /** @param keptBy what stands between the ingest and the store: nothing, but for a host that is broken on purpose */
    HostMachine(Agenda agenda, Dice dice, Disk disk, Network network, Broker broker,
                Function<Store, UnaryOperator<EventLog>> keptBy) {
        super("host", agenda, dice, disk);
        this.network = network;
        this.broker = broker;
        this.keptBy = keptBy;
    }

    /** What the store is like to whoever looks from outside. */
    Checkup look() {
        return Checkup.of(Database.file(disk.database()));
    }

    Store store() {
        return store;
    }

    Optional<Score> shown(Topics lane) {
        return isOn() ? Shown.score(boards, lane) : Optional.empty();
    }

    /** False where it is off, or the broker is away. */
    boolean ask(Topics lane, Command command) {
        boolean sent = isOn() && ingest.send(lane, command);
        wakeFeed();
        return sent;
    }

    Optional<Answer> answer(String command) {
        return Optional.ofNullable(answers.get(command));
    }

    /** Its wall clock is set wrong, or right again. */
    void jumps(long byNs) {
        offByNs += byNs;
    }

    @Override
    void start() {
        store = Store.open(Database.file(disk.database()));
        boards = new LiveLanes("sim");
        line = new Line();
        ingest = new Ingest(line, keptBy.apply(store).apply(new Keeper(store)), new Listening(), kept -> { }, new Wall(),
                agenda::nowNs, dice.generator());
        IngestByHand hands = new IngestByHand(ingest);
        feed = agent("feed", false, () -> {
            long waitMs = hands.feed();
            return waitMs > 0 ? waitMs * Agenda.MS : 200 * Agenda.MS;
        });
        intake = agent("intake", true, () -> {
            boolean worked = hands.intake();
            wakeFeed();
            return worked ? Agent.WORKED : 200 * Agenda.MS;
        });
        news = agent("news", false, () -> hands.news() ? Agent.WORKED : 200 * Agenda.MS);
        feed.wake();
        intake.wake();
        news.wake();
    }

    /** Something goes out; but between two tries to connect it waits for its time. */
    private void wakeFeed() {
        if (ingest.connected()) {
            feed.wake();
        }
    }

    @Override
    void perish(End how, boolean withinStep) {
        line.perish(how, withinStep);
        store.close();
    }

    private final class Listening implements News.Reader {
        @Override
        public void score(Topics lane, Score score) {
            boards.score(lane, score);
        }

        @Override
        public void health(Topics lane, Health health) {
            boards.health(lane, health);
        }

        @Override
        public void answer(Topics lane, Answer answer) {
            answers.put(answer.id(), answer);
        }
    }

    private final class Wall extends Clock {
        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return LaneClock.truth(agenda.nowNs()).plusNanos(offByNs);
        }
    }

    /** Its line to the broker; whoever waits on it waits in simulated time, and the world goes on meanwhile. */
    private final class Line implements Connection, Call.Client {
        private static final long LIMIT_NS = 10 * Agenda.S;
        private Call call;
        private Receiver receiver;
        private boolean perished;
        private boolean lost;
        private long heard;
        private long tags;

        void perish(End how, boolean withinStep) {
            perished = true;
            if (call != null && how == End.KILLED) {
                call.dropByClient();
            } else if (call != null) {
                call.vanish(withinStep);
            }
        }

        @Override
        public void connect(Receiver to) throws IOException {
            receiver = to;
            lost = false;
            long before = heard;
            call = new Call(network, broker, "host", false, null, null, this);
            await(() -> heard > before, "no connection");
        }

        @Override
        public void subscribe(List<String> filters) throws IOException {
            long before = heard;
            call.subscribe(filters);
            await(() -> heard > before, "not subscribed");
        }

        @Override
        public void publish(Message message, boolean retained) throws IOException {
            long before = heard;
            call.publish(++tags, message.topic(), message.payload(), retained);
            await(() -> heard > before, "not acknowledged");
        }

        private void await(BooleanSupplier holds, String otherwise) throws IOException {
            boolean came = agenda.runUntil(() -> perished || lost || holds.getAsBoolean(), LIMIT_NS);
            if (perished) {
                throw new PowerCut();
            }
            if (lost || !came) {
                throw new IOException(otherwise);
            }
        }

        @Override
        public void abandon() {
            if (call != null) {
                call.dropByClient();
            }
        }

        @Override
        public void close() {
            abandon();
        }

        @Override
        public void accepted() {
            heard++;
        }

        @Override
        public void subscribed() {
            heard++;
        }

        @Override
        public void taken(long tag) {
            heard += tag == tags ? 1 : 0;
        }

        @Override
        public void message(String topic, byte[] payload, boolean retained) {
            receiver.message(Message.of(topic, payload));
            intake.wake();
            news.wake();
        }

        @Override
        public void lost(String why) {
            lost = true;
            receiver.lost(why);
        }
    }
}
