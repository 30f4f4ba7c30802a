package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class FeedTest {
    private static final Duration SHORT = Duration.ofMillis(4);

    private final FakeBroker broker = new FakeBroker();
    private final BlockingQueue<String> happened = new LinkedBlockingQueue<>();
    private final Feed feed = new Feed(broker, List.of("a/+"), new Feed.Listener() {
        @Override
        public void message(Message message) {
            happened.add("got " + message.topic());
        }

        @Override
        public void connected() {
            happened.add("connected");
        }
    }, new Backoff(SHORT, SHORT, new Random(1)), System::nanoTime);

    @AfterEach
    void close() {
        feed.close();
    }

    @Test
    void triesForEverWhenTheBrokerIsNotThereAtFirst() throws Exception {
        broker.refusals = 5;
        feed.start();

        await("connected");
        assertThat(broker.tries.get()).isEqualTo(6);
    }

    @Test
    void subscribesAgainAfterEveryLoss() throws Exception {
        feed.start();
        await("connected");
        broker.lose();
        await("connected");

        assertThat(broker.calls).containsSubsequence("connect", "subscribe [a/+]", "abandon", "connect",
                "subscribe [a/+]");
    }

    @Test
    void noticesALossThatComesWhileItSubscribes() throws Exception {
        broker.losesWhileSubscribing = true;
        feed.start();

        await("connected");
        await("connected");
    }

    @Test
    void publishesWhatWasAnnouncedWhileTheBrokerWasAwayTheLatestOfEachTopic() throws Exception {
        feed.announce(message("t", "1"));
        feed.announce(message("t", "2"));
        feed.announce(message("u", "3"));
        feed.start();

        assertThat(broker.published.poll(5, TimeUnit.SECONDS)).isEqualTo("t 2 retained");
        assertThat(broker.published.poll(5, TimeUnit.SECONDS)).isEqualTo("u 3 retained");
    }

    @Test
    void publishesAgainWhatTheBrokerMayNotHave() throws Exception {
        feed.start();
        await("connected");
        broker.failingPublishes = 1;
        feed.announce(message("t", "1"));

        assertThat(broker.published.poll(5, TimeUnit.SECONDS)).isEqualTo("t 1 retained");
    }

    @Test
    void sendsNoCommandLater() throws Exception {
        assertThat(feed.send(message("c", "1"))).isFalse();
        feed.start();
        await("connected");
        broker.failingPublishes = 1;
        assertThat(feed.send(message("c", "2"))).isTrue();
        await("connected");
        feed.announce(message("t", "3"));

        assertThat(broker.published.poll(5, TimeUnit.SECONDS)).isEqualTo("t 3 retained");
    }

    @Test
    void saysWhatIsWaitingBeforeItLeaves() throws Exception {
        feed.start();
        await("connected");
        feed.announce(message("t", "last"));
        feed.close();

        assertThat(broker.published.poll()).isEqualTo("t last retained");
        assertThat(broker.calls).endsWith("close");
    }

    private void await(String what) throws InterruptedException {
        assertThat(happened.poll(10, TimeUnit.SECONDS)).isEqualTo(what);
    }

    private static Message message(String topic, String payload) {
        return Message.of(topic, payload.getBytes(StandardCharsets.UTF_8));
    }

    /** A broker that can be away, drop clients, and fail. */
    private static final class FakeBroker implements Connection {
        final BlockingQueue<String> calls = new LinkedBlockingQueue<>();
        final BlockingQueue<String> published = new LinkedBlockingQueue<>();
        final AtomicInteger tries = new AtomicInteger();
        volatile int refusals;
        volatile int failingPublishes;
        volatile boolean losesWhileSubscribing;
        private volatile Receiver receiver;

        void lose() {
            receiver.lost("pulled the plug");
        }

        @Override
        public void connect(Receiver to) throws IOException {
            if (tries.incrementAndGet() <= refusals) {
                throw new IOException("refused");
            }
            receiver = to;
            calls.add("connect");
        }

        @Override
        public void subscribe(List<String> filters) {
            calls.add("subscribe " + filters);
            if (losesWhileSubscribing) {
                losesWhileSubscribing = false;
                lose();
            }
        }

        @Override
        public void publish(Message message, boolean retained) throws IOException {
            if (failingPublishes-- > 0) {
                throw new IOException("no ack");
            }
            published.add(message.topic() + " " + new String(message.payload(), StandardCharsets.UTF_8)
                    + (retained ? " retained" : ""));
        }

        @Override
        public void abandon() {
            calls.add("abandon");
        }

        @Override
        public void close() {
            calls.add("close");
        }
    }
}
