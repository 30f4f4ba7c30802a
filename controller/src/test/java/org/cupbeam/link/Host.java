package org.cupbeam.link;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A studio host, no more than a test needs of one: hears all, stores each event once and in order, says how far. */
final class Host implements MqttCallback, AutoCloseable {
    /** Sequences that came, whenever and how often. */
    final Set<Long> arrived = ConcurrentHashMap.newKeySet();
    /** Sequences in the order in which they were stored: each after the one before it. */
    final List<Long> stored = Collections.synchronizedList(new ArrayList<>());
    final List<Health> healths = Collections.synchronizedList(new ArrayList<>());
    final Map<String, String> answers = new ConcurrentHashMap<>();
    final Map<String, MqttMessage> latest = new ConcurrentHashMap<>();
    private final ScheduledExecutorService own = Executors.newSingleThreadScheduledExecutor();
    private final MqttAsyncClient client;
    private volatile String journal = "";
    private long said = -1;

    Host(String uri) throws MqttException {
        client = new MqttAsyncClient(uri, "host-" + System.identityHashCode(this), new MemoryPersistence());
        client.setCallback(this);
        own.scheduleWithFixedDelay(this::tend, 0, 50, TimeUnit.MILLISECONDS);
    }

    private void tend() {
        try {
            if (!client.isConnected()) {
                said = -1;
                client.connect(options()).waitForCompletion(3_000);
                client.subscribe("cupbeam/north/bay-3/#", 1).waitForCompletion(3_000);
            }
            while (arrived.contains(stored.size() + 1L)) {
                stored.add(stored.size() + 1L);
            }
            if (stored.size() != said && !journal.isEmpty()) {
                publish("stored", StoredJson.encode(new Stored(journal, stored.size())), true);
                said = stored.size();
            }
        } catch (MqttException e) {
            // the next time, then
        }
    }

    /** Paho counts a publish as in flight until its callbacks' thread comes to it, which may be long after it was acknowledged. */
    private static MqttConnectOptions options() {
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMaxInflight(1_000);
        return options;
    }

    void command(Command command) throws MqttException {
        publish("command", CommandJson.encode(command), false);
    }

    private void publish(String kind, byte[] payload, boolean retained) throws MqttException {
        client.publish("cupbeam/north/bay-3/" + kind, payload, 1, retained).waitForCompletion(3_000);
    }

    boolean connected() {
        return client.isConnected() && said != -1 || client.isConnected() && journal.isEmpty();
    }

    Health.State lastState() {
        return healths.isEmpty() ? null : healths.get(healths.size() - 1).state();
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
        latest.put(topic.substring(topic.lastIndexOf('/') + 1), message);
        try {
            if (topic.endsWith("/event")) {
                Event event = EventJson.decode(message.getPayload());
                journal = event.source().journal();
                arrived.add(event.sequence());
            } else if (topic.endsWith("/health")) {
                healths.add(HealthJson.decode(message.getPayload()));
            } else if (topic.endsWith("/answer")) {
                var answer = CommandJson.decodeAnswer(message.getPayload());
                answers.put(answer.id(), String.valueOf(answer.reason()));
            }
        } catch (BadMessage e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void connectionLost(Throwable cause) {
        // tend sees to it
    }

    @Override
    public void deliveryComplete(IMqttDeliveryToken token) {
        // nobody asks
    }

    @Override
    public void close() throws Exception {
        own.shutdownNow();
        own.awaitTermination(5, TimeUnit.SECONDS);
        try {
            client.disconnectForcibly(0, 1, false);
        } catch (MqttException e) {
            // it was not connected
        }
        client.close(true);
    }
}
