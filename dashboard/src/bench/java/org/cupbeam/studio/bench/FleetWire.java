package org.cupbeam.studio.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.StoredJson;
import org.cupbeam.link.PromptSockets;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** One connection that some lanes share; after a loss it is made anew, and what is not stored is sent again. */
final class FleetWire {
    private final String uri;
    private final String name;
    private final Map<String, FleetLane> lanes = new HashMap<>();
    private volatile MqttAsyncClient client;

    FleetWire(String uri, String name, List<FleetLane> lanes) {
        this.uri = uri;
        this.name = name;
        lanes.forEach(each -> this.lanes.put(each.topics.stored(), each));
    }

    /** Waits until there is a broker. */
    void connect() throws InterruptedException {
        while (!tryToConnect()) {
            TimeUnit.MILLISECONDS.sleep(300);
        }
        for (FleetLane each : lanes.values()) {
            send(each, each.pending());
        }
    }

    /** What cannot go out now stays with the lane. */
    void send(FleetLane lane, List<SyntheticLane.Said> all) {
        MqttAsyncClient there = client;
        try {
            for (SyntheticLane.Said each : all) {
                there.publish(lane.topics.event(), each.event(), 1, false);
                there.publish(lane.topics.score(), each.score(), 1, true);
            }
        } catch (MqttException away) {
            // It is sent again when the connection is back.
        }
    }

    void sendOverdue() {
        lanes.values().forEach(each -> send(each, each.overdue()));
    }

    private boolean tryToConnect() {
        try {
            MqttAsyncClient fresh = new MqttAsyncClient(uri, name, new MemoryPersistence());
            fresh.setCallback(new Callbacks());
            MqttConnectOptions options = new MqttConnectOptions();
            options.setMaxInflight(20_000);
            options.setSocketFactory(new PromptSockets()); // as a true lane
            fresh.connect(options).waitForCompletion(5_000);
            List<String> topics = new ArrayList<>(lanes.keySet());
            fresh.subscribe(topics.toArray(String[]::new), topics.stream().mapToInt(t -> 1).toArray()).waitForCompletion(5_000);
            client = fresh;
            return true;
        } catch (MqttException notYet) {
            return false;
        }
    }

    private final class Callbacks implements MqttCallback {
        @Override
        public void messageArrived(String topic, MqttMessage message) {
            try {
                lanes.get(topic).stored(StoredJson.decode(message.getPayload()).sequence());
            } catch (BadMessage e) {
                throw new AssertionError(e);
            }
        }

        @Override
        public void connectionLost(Throwable cause) {
            Thread again = new Thread(() -> {
                try {
                    connect();
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            }, name + "-again");
            again.setDaemon(true);
            again.start();
        }

        @Override
        public void deliveryComplete(IMqttDeliveryToken token) {
            // The host's word counts.
        }
    }
}
