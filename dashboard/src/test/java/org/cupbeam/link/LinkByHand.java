package org.cupbeam.link;

import java.util.ArrayDeque;
import java.util.List;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.Outbox;

/** The lane's own link, without its thread and without Paho: whoever holds it takes its steps, and is its network. */
public final class LinkByHand {
    /** What the link asks of the network; each only begins something. */
    public interface Line {
        void connect(String willTopic, byte[] will);

        void subscribe(List<String> topics);

        void publish(long tag, String topic, byte[] payload, boolean retained);

        void drop();
    }

    private final Link link;
    private final News news;

    public LinkByHand(Topics topics, String boot, Outbox outbox, LongSupplier clockNs, RandomGenerator random,
                      Predicate<Command> commands, Line line) {
        news = new News(line);
        link = new Link(wake -> news, topics, boot, outbox, clockNs, random, commands);
    }

    public int step() {
        return link.doWork();
    }

    public boolean online() {
        return link.online();
    }

    public void score(Score score) {
        link.score(score);
    }

    public void health(Health.Report report) {
        link.health(report);
    }

    public void answer(Answer answer) {
        link.answer(answer);
    }

    public void connected() {
        news.queue.add(new Wire.News.Connected());
    }

    public void subscribed() {
        news.queue.add(new Wire.News.Subscribed());
    }

    public void acknowledged(long tag) {
        news.queue.add(new Wire.News.Acknowledged(tag));
    }

    public void received(String topic, byte[] payload, boolean retained) {
        news.queue.add(new Wire.News.Received(new Wire.Message(topic, payload, retained)));
    }

    public void failed(String reason) {
        news.queue.add(new Wire.News.Failed(reason));
    }

    private static final class News implements Wire {
        private final Line line;
        private final ArrayDeque<Wire.News> queue = new ArrayDeque<>();

        News(Line line) {
            this.line = line;
        }

        @Override
        public void connect(Message will) {
            line.connect(will.topic(), will.payload());
        }

        @Override
        public void subscribe(List<String> topics) {
            line.subscribe(topics);
        }

        @Override
        public void publish(long tag, Message message) {
            line.publish(tag, message.topic(), message.payload(), message.retained());
        }

        @Override
        public void drop() {
            queue.clear();
            line.drop();
        }

        @Override
        public void leave() {
            line.drop();
        }

        @Override
        public Wire.News next() {
            return queue.poll();
        }

        @Override
        public long overrun() {
            return 0;
        }

        @Override
        public void close() {
            line.drop();
        }
    }
}
