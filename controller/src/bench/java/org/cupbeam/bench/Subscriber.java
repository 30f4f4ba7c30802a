package org.cupbeam.bench;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** Somebody at the broker who notes when each message reaches him. */
final class Subscriber implements MqttCallback, AutoCloseable {
    private static final int WAIT_S = 10;

    /**
     * A message.
     *
     * @param atNs when it was here, by {@link System#nanoTime()}
     */
    record Received(String topic, byte[] payload, long atNs) {
    }

    private final MqttAsyncClient client;
    private final BlockingQueue<Received> received = new LinkedBlockingQueue<>();

    Subscriber(Broker broker, String... topics) throws MqttException {
        client = new MqttAsyncClient(broker.uri(), "bench-subscriber", new MemoryPersistence());
        client.setCallback(this);
        client.connect().waitForCompletion();
        for (String topic : topics) {
            client.subscribe(topic, 1).waitForCompletion();
        }
    }

    /** The next message that is wanted; those before it are thrown away. */
    Received await(Predicate<Received> wanted) throws InterruptedException {
        for (Received next; (next = received.poll(WAIT_S, TimeUnit.SECONDS)) != null;) {
            if (wanted.test(next)) {
                return next;
            }
        }
        throw new IllegalStateException("nothing has come within " + WAIT_S + " s");
    }

    void publish(String topic, byte[] payload, boolean retained) throws MqttException {
        client.publish(topic, payload, 1, retained);
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
        received.add(new Received(topic, message.getPayload(), System.nanoTime()));
    }

    @Override
    public void connectionLost(Throwable cause) {
        throw new IllegalStateException("the broker has gone", cause);
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
