package org.cupbeam.board;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.cupbeam.event.Topics;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** The host's side of a lane: keeps what it says, and says that it is stored. */
final class Listener implements MqttCallback, AutoCloseable {
    private final Topics topics;
    private final MqttAsyncClient client;
    private final List<Heard> attempts = new CopyOnWriteArrayList<>();
    private volatile Health health;
    private volatile Score score;
    private volatile Throwable broken;
    private volatile long stored;

    /** An attempt. @param atNs when it was here, by {@link System#nanoTime()} */
    record Heard(Data.Attempt attempt, long atNs) {
    }

    Listener(int port, Topics topics) throws MqttException {
        this.topics = topics;
        client = new MqttAsyncClient("tcp://127.0.0.1:" + port, "board-listener", new MemoryPersistence());
        client.setCallback(this);
        client.connect().waitForCompletion();
        for (String topic : List.of(topics.event(), topics.health(), topics.score())) {
            client.subscribe(topic, 1).waitForCompletion();
        }
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) throws MqttException, BadMessage {
        long atNs = System.nanoTime();
        if (topic.equals(topics.health())) {
            health = HealthJson.decode(message.getPayload());
        } else if (topic.equals(topics.score())) {
            score = ScoreJson.decode(message.getPayload());
        } else {
            Event event = EventJson.decode(message.getPayload());
            if (event.sequence() > stored) {
                stored = event.sequence();
                if (event.data() instanceof Data.Attempt attempt) {
                    attempts.add(new Heard(attempt, atNs));
                }
            }
            client.publish(topics.of(Topics.Kind.STORED),
                    StoredJson.encode(new Stored(event.source().journal(), stored)), 1, true);
        }
    }

    List<Heard> attempts() {
        return attempts;
    }

    /** What was heard until now, of a lane that begins anew. */
    void forget() {
        attempts.clear();
        stored = 0;
        health = null;
    }

    Health health() {
        return health;
    }

    Score score() {
        return score;
    }

    /** One sensor as it was last heard of. */
    Optional<Health.Sensor> sensor(String name) {
        Health now = health;
        return now == null || now.report() == null ? Optional.empty()
                : now.report().sensors().stream().filter(each -> each.name().equals(name)).findFirst();
    }

    List<String> faults() {
        Health now = health;
        return now == null || now.report() == null ? List.of() : now.report().faults();
    }

    /** Waits until it is so. */
    void await(String what, int withinS, Supplier<Boolean> so) throws InterruptedException {
        long fromNs = System.nanoTime();
        while (!so.get()) {
            if (broken != null || System.nanoTime() - fromNs > TimeUnit.SECONDS.toNanos(withinS)) {
                throw new AssertionError("not within " + withinS + " s: " + what + "; attempts " + attempts.size()
                        + ", health " + health, broken);
            }
            TimeUnit.MILLISECONDS.sleep(20);
        }
    }

    @Override
    public void connectionLost(Throwable cause) {
        broken = cause;
    }

    @Override
    public void deliveryComplete(IMqttDeliveryToken token) {
    }

    @Override
    public void close() throws MqttException {
        client.disconnectForcibly(0, 1_000);
        client.close();
    }
}
