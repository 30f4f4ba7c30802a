package org.cupbeam.studio;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A test's own client of a broker: what a lane, or anybody, would send and hear. */
public final class Wire implements AutoCloseable {
    private final MqttClient client;
    private final BlockingQueue<String> heard = new LinkedBlockingQueue<>();

    public Wire(String uri) throws MqttException {
        this(uri, null, null);
    }

    /** One who gives a name and a password. */
    public Wire(String uri, String user, String password) throws MqttException {
        client = new MqttClient(uri, "test-" + UUID.randomUUID().toString().substring(0, 8), new MemoryPersistence());
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMaxInflight(1_000);
        if (user != null) {
            options.setUserName(user);
            options.setPassword(password.toCharArray());
        }
        client.setTimeToWait(10_000);
        client.connect(options);
    }

    public Wire hear(String filter) throws MqttException {
        client.subscribe(filter, 1, (topic, message) ->
                heard.add(topic + " " + new String(message.getPayload(), StandardCharsets.UTF_8)));
        return this;
    }

    public void say(String topic, byte[] payload, boolean retained) throws MqttException {
        client.publish(topic, payload, 1, retained);
    }

    /** Has the broker forget what it retains of a topic. */
    public void forget(String topic) throws MqttException {
        say(topic, new byte[0], true);
    }

    /** Whether a message that ends so comes within a time; others are passed over. */
    public boolean heard(String ending, long limitMs) throws InterruptedException {
        long untilNs = System.nanoTime() + limitMs * 1_000_000;
        while (System.nanoTime() < untilNs) {
            String next = heard.poll(50, TimeUnit.MILLISECONDS);
            if (next != null && next.endsWith(ending)) {
                return true;
            }
        }
        return false;
    }

    @Override
    public void close() throws MqttException {
        try {
            client.disconnectForcibly(0, 200);
        } finally {
            client.close(true);
        }
    }
}
