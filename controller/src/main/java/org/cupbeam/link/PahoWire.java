package org.cupbeam.link;

import java.util.List;
import java.util.Queue;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import javax.net.SocketFactory;
import javax.net.ssl.SSLSocketFactory;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * The line by Eclipse Paho. Its client neither reconnects nor keeps anything by itself, and its callbacks only put what
 * they hear into queues: whatever waits, or fails, in a callback of its takes the connection with it.
 */
final class PahoWire implements Wire, MqttCallback {
    private static final int WORDS = 256;
    private static final int MESSAGES = 128;
    private static final int LARGEST_BYTES = 64 * 1024;
    private static final int KEEP_ALIVE_S = 30;
    private static final int CONNECT_S = 10;
    private static final int MAX_IN_FLIGHT = 64;
    private static final long GOODBYE_MS = 2_000;
    private static final int REFUSED = 0x80;

    private final LinkOptions options;
    private final String clientId;
    private final Runnable wake;
    private final Queue<News> words = new ArrayBlockingQueue<>(WORDS);
    private final Queue<News> messages = new ArrayBlockingQueue<>(MESSAGES);
    private final AtomicLong overrun = new AtomicLong();
    private volatile boolean deaf;
    private volatile long era;
    private MqttAsyncClient client;

    PahoWire(LinkOptions options, String clientId, Runnable wake) {
        this.options = options;
        this.clientId = clientId;
        this.wake = wake;
    }

    @Override
    public void connect(Message will) {
        era++;
        attempt(() -> {
            if (client == null) {
                client = new MqttAsyncClient(options.broker(), clientId, new MemoryPersistence());
                client.setCallback(this);
            }
            client.connect(settings(will), null, told(new News.Connected()));
        });
    }

    private MqttConnectOptions settings(Message will) throws MqttException {
        MqttConnectOptions settings = new MqttConnectOptions();
        settings.setAutomaticReconnect(false);
        settings.setCleanSession(true);
        settings.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
        settings.setKeepAliveInterval(KEEP_ALIVE_S);
        settings.setConnectionTimeout(CONNECT_S);
        settings.setMaxInflight(MAX_IN_FLIGHT);
        settings.setWill(will.topic(), will.payload(), 1, will.retained());
        if (options.user() != null) {
            settings.setUserName(options.user());
        }
        if (options.password() != null) {
            settings.setPassword(options.password().toCharArray());
        }
        settings.setSocketFactory(sockets());
        return settings;
    }

    private SocketFactory sockets() {
        if (!options.broker().startsWith("ssl:")) {
            return new PromptSockets();
        }
        return new PromptTlsSockets(options.trusted() != null ? Trust.only(options.trusted())
                : (SSLSocketFactory) SSLSocketFactory.getDefault());
    }

    @Override
    public void subscribe(List<String> topics) {
        int[] once = topics.stream().mapToInt(topic -> 1).toArray();
        long began = era;
        attempt(() -> client.subscribe(topics.toArray(String[]::new), once, null, new IMqttActionListener() {
            @Override
            public void onSuccess(IMqttToken token) {
                boolean refused = false;
                for (int granted : token.getGrantedQos()) {
                    refused |= granted == REFUSED;
                }
                say(began, refused ? new News.Failed("the broker does not let us subscribe; see its access rules")
                        : new News.Subscribed());
            }

            @Override
            public void onFailure(IMqttToken token, Throwable e) {
                say(began, failed(e));
            }
        }));
    }

    @Override
    public void publish(long tag, Message message) {
        attempt(() -> client.publish(message.topic(), message.payload(), 1, message.retained(), null,
                told(new News.Acknowledged(tag))));
    }

    @Override
    public void drop() {
        era++;
        words.clear();
        messages.clear();
        deaf = false;
        discard();
    }

    @Override
    public void leave() {
        era++;
        try {
            if (client != null && client.isConnected()) {
                client.disconnect(0).waitForCompletion(GOODBYE_MS);
            }
        } catch (MqttException e) {
            discard();
        }
    }

    /** A client that has failed is not to be trusted with the next connection; it is let go with all its threads. */
    private void discard() {
        MqttAsyncClient old = client;
        client = null;
        if (old == null) {
            return;
        }
        old.setCallback(null);
        try {
            old.disconnectForcibly(0, 1, false);
        } catch (MqttException e) {
            // it was not connected
        }
        try {
            old.close(true);
        } catch (MqttException e) {
            // it is closed
        }
    }

    @Override
    public News next() {
        News news = words.poll();
        if (news == null && deaf) {
            deaf = false;
            return new News.Failed("more came at once than could be heard");
        }
        return news == null ? messages.poll() : news;
    }

    @Override
    public long overrun() {
        return overrun.get();
    }

    @Override
    public void close() {
        era++;
        discard();
    }

    @Override
    public void connectionLost(Throwable cause) {
        say(era, failed(cause));
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
        boolean taken = message.getPayload().length <= LARGEST_BYTES
                && messages.offer(new News.Received(new Message(topic, message.getPayload(), message.isRetained())));
        if (!taken) {
            overrun.incrementAndGet();
        }
        wake.run();
    }

    @Override
    public void deliveryComplete(IMqttDeliveryToken token) {
        // each publication's own listener is told
    }

    private IMqttActionListener told(News success) {
        long began = era;
        return new IMqttActionListener() {
            @Override
            public void onSuccess(IMqttToken token) {
                say(began, success);
            }

            @Override
            public void onFailure(IMqttToken token, Throwable e) {
                say(began, failed(e));
            }
        };
    }

    private void say(long began, News news) {
        if (began == era) {
            deaf |= !words.offer(news);
            wake.run();
        }
    }

    private News failed(Throwable e) {
        Throwable cause = e == null ? null : e.getCause() == null ? e : e.getCause();
        return new News.Failed(options + ": " + (cause == null ? "the connection broke" : cause.getMessage() == null
                ? cause.getClass().getSimpleName() : cause.getMessage()));
    }

    private interface Step {
        void run() throws MqttException;
    }

    private void attempt(Step step) {
        try {
            step.run();
        } catch (MqttException | RuntimeException e) {
            say(era, failed(e));
        }
    }
}
