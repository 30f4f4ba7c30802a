package org.cupbeam.lane;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Properties;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** Somebody who listens to the lane north/bay-3 and can ask it for something, and a broker in this process. */
public final class Studio implements AutoCloseable {
    private static final String TOPIC = "cupbeam/north/bay-3/";
    /** What was said under each sequence, as it was said first. */
    public final TreeMap<Long, byte[]> events = new TreeMap<>();
    public final List<Score> scores = Collections.synchronizedList(new ArrayList<>());
    public final List<Health> healths = Collections.synchronizedList(new ArrayList<>());
    public final List<Answer> answers = Collections.synchronizedList(new ArrayList<>());
    public final List<String> complaints = Collections.synchronizedList(new ArrayList<>());
    private final String uri;
    private Server server;
    private MqttClient client;

    /** With a broker of its own, once it is opened. */
    public Studio() throws IOException {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            uri = "tcp://127.0.0.1:" + free.getLocalPort();
        }
    }

    /** With a broker that is there. */
    Studio(String uri) {
        this.uri = uri;
    }

    public String uri() {
        return uri;
    }

    public Studio open() throws IOException, MqttException {
        Properties settings = new Properties();
        settings.setProperty(IConfig.HOST_PROPERTY_NAME, "127.0.0.1");
        settings.setProperty(IConfig.PORT_PROPERTY_NAME, uri.substring(uri.lastIndexOf(':') + 1));
        settings.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
        settings.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
        settings.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
        server = new Server();
        server.startServer(new MemoryConfig(settings));
        return listen();
    }

    Studio listen() throws MqttException {
        client = new MqttClient(uri, "listener", new MemoryPersistence());
        client.setTimeToWait(5_000);
        client.connect();
        client.subscribe(TOPIC + "#", 1, (topic, message) -> heard(topic.substring(TOPIC.length()), message.getPayload()));
        return this;
    }

    private void heard(String kind, byte[] payload) {
        try {
            switch (kind) {
                case "event" -> event(payload);
                case "score" -> scores.add(ScoreJson.decode(payload));
                case "health" -> healths.add(HealthJson.decode(payload));
                case "answer" -> answers.add(CommandJson.decodeAnswer(payload));
                default -> { }
            }
        } catch (BadMessage e) {
            complaints.add(kind + ": " + e.getMessage());
        }
    }

    private void event(byte[] payload) throws BadMessage {
        long sequence = EventJson.envelope(payload).sequence();
        synchronized (events) {
            byte[] before = events.putIfAbsent(sequence, payload);
            if (before != null && !Arrays.equals(before, payload)) {
                complaints.add(sequence + " is two different events");
            }
        }
    }

    /** What was heard, each once, in order of sequence. */
    public List<Event> heard() throws BadMessage {
        List<Event> all = new ArrayList<>();
        synchronized (events) {
            for (byte[] each : events.values()) {
                all.add(EventJson.decode(each));
            }
        }
        return all;
    }

    public int count() {
        synchronized (events) {
            return events.size();
        }
    }

    public void ask(Command command) throws MqttException {
        client.publish(TOPIC + "command", CommandJson.encode(command), 1, false);
    }

    /** Waits for what a lane brings about; an error after 30 s. */
    public static void until(String what, Callable<Boolean> holds) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
        while (!holds.call()) {
            if (System.nanoTime() - end > 0) {
                throw new AssertionError("not within 30 s: " + what);
            }
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
        }
    }

    @Override
    public void close() throws MqttException {
        if (client != null) {
            client.disconnectForcibly(0, 1, false);
            client.close(true);
        }
        if (server != null) {
            server.stopServer();
        }
    }
}
