package org.cupbeam.studio.ingest;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A broker reached through Eclipse Paho. Its automatic reconnecting stays off (it never starts when the first try
 * fails, and forgets the subscriptions); nothing is kept in its files (a torn one stops the client from being made);
 * one client object serves all connections, and is replaced only when it is stuck between two states.
 */
public final class PahoConnection implements Connection {
    private static final Logger LOG = LoggerFactory.getLogger(PahoConnection.class);
    private static final int KEEP_ALIVE_S = 30;
    private static final int CONNECT_LIMIT_S = 10;
    private static final long ACK_LIMIT_MS = 10_000;
    private static final long GOODBYE_LIMIT_MS = 1_000;
    private static final int MOST_IN_FLIGHT = 64;

    private final String brokerUri;
    private final String clientId;
    private final Pass pass;
    private final boolean acknowledgesLate;
    private volatile MqttAsyncClient client;
    private volatile Callbacks current;

    /**
     * @param brokerUri as {@code tcp://127.0.0.1:1883}
     * @param clientId  the same at every start, so that the broker finds the session again
     */
    public PahoConnection(String brokerUri, String clientId) {
        this(brokerUri, clientId, Pass.NONE);
    }

    /** @param pass how to be let in */
    public PahoConnection(String brokerUri, String clientId, Pass pass) {
        this(brokerUri, clientId, pass, false);
    }

    /** @param acknowledgesLate whether the broker is to have a message until {@link Message#taken} is run */
    public PahoConnection(String brokerUri, String clientId, Pass pass, boolean acknowledgesLate) {
        this.acknowledgesLate = acknowledgesLate;
        this.brokerUri = brokerUri;
        this.clientId = clientId;
        this.pass = pass;
    }

    @Override
    public void connect(Receiver receiver) throws IOException {
        try {
            if (client == null) {
                client = new MqttAsyncClient(brokerUri, clientId, new MemoryPersistence());
            }
            client.setManualAcks(acknowledgesLate);
            current = new Callbacks(receiver);
            client.setCallback(current);
            client.connect(options()).waitForCompletion(CONNECT_LIMIT_S * 1_000L + GOODBYE_LIMIT_MS);
        } catch (MqttException e) {
            throw said("connecting to " + brokerUri, e);
        }
    }

    @Override
    public void subscribe(List<String> filters) throws IOException {
        int[] atLeastOnce = new int[filters.size()];
        Arrays.fill(atLeastOnce, 1);
        try {
            client.subscribe(filters.toArray(String[]::new), atLeastOnce).waitForCompletion(ACK_LIMIT_MS);
        } catch (MqttException e) {
            throw said("subscribing to " + filters, e);
        }
    }

    @Override
    public void publish(Message message, boolean retained) throws IOException {
        try {
            client.publish(message.topic(), message.payload(), 1, retained).waitForCompletion(ACK_LIMIT_MS);
        } catch (MqttException e) {
            throw said("publishing to " + message.topic(), e);
        }
    }

    @Override
    public void abandon() {
        if (client == null) {
            return;
        }
        client.setCallback(null);
        try {
            client.disconnectForcibly(0, GOODBYE_LIMIT_MS, false);
        } catch (MqttException e) {
            LOG.debug("dropping the connection to {}: {}", brokerUri, e.toString());
        }
        if (client.isConnected()) {
            free();
        }
    }

    @Override
    public void close() {
        if (client == null) {
            return;
        }
        client.setCallback(null);
        try {
            if (client.isConnected()) {
                client.disconnect(0).waitForCompletion(GOODBYE_LIMIT_MS);
            }
        } catch (MqttException e) {
            LOG.debug("saying goodbye to {}: {}", brokerUri, e.toString());
            abandon();
        }
        free();
    }

    private void free() {
        MqttAsyncClient old = client;
        client = null;
        try {
            if (old != null) {
                old.close(true);
            }
        } catch (MqttException e) {
            LOG.debug("freeing the client of {}: {}", brokerUri, e.toString());
        }
    }

    private MqttConnectOptions options() {
        MqttConnectOptions options = new MqttConnectOptions();
        options.setAutomaticReconnect(false);
        options.setCleanSession(false);
        options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
        options.setKeepAliveInterval(KEEP_ALIVE_S);
        options.setConnectionTimeout(CONNECT_LIMIT_S);
        options.setMaxInflight(MOST_IN_FLIGHT);
        if (pass.user() != null) {
            options.setUserName(pass.user());
        }
        if (pass.password() != null) {
            options.setPassword(pass.password().toCharArray());
        }
        if (pass.trusted() != null) {
            options.setSocketFactory(pass.trusted());
        }
        return options;
    }

    private IOException said(String doing, MqttException e) {
        boolean stuck = e.getReasonCode() == MqttException.REASON_CODE_CLIENT_CLOSED
                || e.getReasonCode() == MqttException.REASON_CODE_CLIENT_DISCONNECTING
                || e.getReasonCode() == MqttException.REASON_CODE_CONNECT_IN_PROGRESS;
        if (stuck) {
            free();
        }
        Throwable root = e.getCause() == null ? e : e.getCause();
        return new IOException(doing + ": " + root, e);
    }

    /** Hands on and returns; nothing thrown ever reaches Paho, which would drop the connection and loop. */
    private final class Callbacks implements MqttCallback {
        private final Receiver receiver;

        Callbacks(Receiver receiver) {
            this.receiver = receiver;
        }

        @Override
        public void messageArrived(String topic, MqttMessage message) {
            try {
                receiver.message(Message.of(topic, message.getPayload(), acknowledgesLate
                        ? () -> acknowledge(message) : Message.NOBODY_WAITS));
            } catch (RuntimeException | Error e) {
                LOG.error("a message of {} was not taken in", topic, e);
            }
        }

        /** Of an earlier connection there is nothing to be acknowledged: its numbers mean others now. */
        private void acknowledge(MqttMessage message) {
            MqttAsyncClient there = client;
            if (current != this || there == null) {
                return;
            }
            try {
                there.messageArrivedComplete(message.getId(), message.getQos());
            } catch (MqttException e) {
                LOG.debug("a message was not acknowledged and will come again: {}", e.toString());
            }
        }

        @Override
        public void connectionLost(Throwable cause) {
            receiver.lost(String.valueOf(cause == null ? "no reason given" : cause.getMessage()));
        }

        @Override
        public void deliveryComplete(IMqttDeliveryToken token) {
            // Whoever published waits for its own token.
        }
    }
}
