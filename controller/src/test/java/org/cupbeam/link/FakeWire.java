package org.cupbeam.link;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A line whose other end a test holds. */
final class FakeWire implements Wire {
    final ArrayDeque<News> news = new ArrayDeque<>();
    final List<Message> wills = new ArrayList<>();
    final List<List<String>> subscriptions = new ArrayList<>();
    final List<Message> published = new ArrayList<>();
    final Map<Long, Message> unacknowledged = new LinkedHashMap<>();
    int drops;
    boolean left;
    boolean closed;

    /** The broker takes the connection, and the subscription. */
    void accept() {
        news.add(new News.Connected());
        news.add(new News.Subscribed());
    }

    void fail(String reason) {
        news.add(new News.Failed(reason));
    }

    void acknowledgeAll() {
        unacknowledged.keySet().forEach(tag -> news.add(new News.Acknowledged(tag)));
        unacknowledged.clear();
    }

    void arrive(String topic, byte[] payload) {
        news.add(new News.Received(new Message(topic, payload, false)));
    }

    /** What went out on topics with this ending, as text, since the last look; all that came before is passed over. */
    List<String> sent(String ending) {
        List<String> texts = published.stream().filter(each -> each.topic().endsWith(ending))
                .map(each -> new String(each.payload(), StandardCharsets.UTF_8)).toList();
        published.clear();
        return texts;
    }

    @Override
    public void connect(Message will) {
        wills.add(will);
    }

    @Override
    public void subscribe(List<String> topics) {
        subscriptions.add(topics);
    }

    @Override
    public void publish(long tag, Message message) {
        published.add(message);
        unacknowledged.put(tag, message);
    }

    @Override
    public void drop() {
        drops++;
        news.clear();
        unacknowledged.clear();
    }

    @Override
    public void leave() {
        left = true;
    }

    @Override
    public News next() {
        return news.poll();
    }

    @Override
    public long overrun() {
        return 0;
    }

    @Override
    public void close() {
        closed = true;
    }
}
