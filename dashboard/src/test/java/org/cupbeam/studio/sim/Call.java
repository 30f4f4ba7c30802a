package org.cupbeam.studio.sim;

import java.util.List;

/**
 * One connection of a client to the broker: two streams, each in order and as late as the network is. Whoever is left
 * alone in it finds out late.
 */
final class Call {
    /** What the client's end of it hears. */
    interface Client {
        void accepted();

        void subscribed();

        void taken(long tag);

        void message(String topic, byte[] payload, boolean retained);

        void lost(String why);
    }

    /** How long a broker or a client waits for a sign of life, ns: 1.5 times 30 s. */
    private static final long SILENCE_NS = 45 * Agenda.S;

    final String clientId;
    final boolean cleanSession;
    final String willTopic;
    final byte[] will;
    private final Network network;
    private final Broker broker;
    private final Client client;
    private long lastUpNs;
    private long lastDownNs;
    private long brokenNs = Long.MAX_VALUE;
    private boolean clientGone;
    private boolean brokerGone;

    Call(Network network, Broker broker, String clientId, boolean cleanSession, String willTopic, byte[] will,
         Client client) {
        this.network = network;
        this.broker = broker;
        this.clientId = clientId;
        this.cleanSession = cleanSession;
        this.willTopic = willTopic;
        this.will = will;
        this.client = client;
        if (broker.isUp()) {
            network.calls().add(this);
            up(() -> broker.connect(this));
        } else {
            brokerGone = true;
            down(() -> tellLost("connection refused"));
        }
    }

    void subscribe(List<String> filters) {
        up(() -> broker.subscribe(this, filters));
    }

    void publish(long tag, String topic, byte[] payload, boolean retained) {
        up(() -> broker.publish(this, tag, topic, payload, retained));
    }

    /** The client has what was pushed. */
    void acknowledge(long packet) {
        up(() -> broker.acknowledged(this, packet));
    }

    void accepted() {
        down(client::accepted);
    }

    void subscribed() {
        down(client::subscribed);
    }

    void taken(long tag) {
        down(() -> client.taken(tag));
    }

    void push(long packet, String topic, byte[] payload, boolean retained) {
        down(() -> {
            acknowledge(packet);
            client.message(topic, payload, retained);
        });
    }

    /** The client lets go of it; what it sent is under way still, and then the broker hears of the end. */
    void dropByClient() {
        if (!clientGone) {
            up(() -> broker.gone(this));
            clientGone = true;
        }
    }

    /** The client's machine is no more: the broker hears nothing. */
    void vanish(boolean withWhatIsUnderWay) {
        clientGone = true;
        if (withWhatIsUnderWay) {
            brokenNs = network.agenda().nowNs();
        }
        network.agenda().after(SILENCE_NS, () -> broker.gone(this));
    }

    /** The broker lets go of it. */
    void dropByBroker(String why) {
        if (!brokerGone) {
            down(() -> tellLost(why));
            brokerGone = true;
            network.calls().remove(this);
        }
    }

    /** The cable between them is pulled: each finds out by the other's silence, or sooner. */
    void breakNow(Dice dice) {
        brokenNs = network.agenda().nowNs() + dice.upToNs(50 * Agenda.MS);
        network.agenda().after(dice.upToNs(SILENCE_NS), () -> tellLost("no sign of life"));
        network.agenda().after(dice.upToNs(SILENCE_NS), () -> broker.gone(this));
    }

    private void tellLost(String why) {
        if (!clientGone) {
            clientGone = true;
            client.lost(why);
        }
    }

    private void up(Runnable packet) {
        if (clientGone) {
            return;
        }
        lastUpNs = Math.max(lastUpNs + 1, network.arrivalNs());
        long atNs = lastUpNs;
        network.agenda().after(atNs - network.agenda().nowNs(), () -> {
            if (!brokerGone && atNs < brokenNs) {
                packet.run();
            }
        });
    }

    private void down(Runnable packet) {
        lastDownNs = Math.max(lastDownNs + 1, network.arrivalNs());
        long atNs = lastDownNs;
        network.agenda().after(atNs - network.agenda().nowNs(), () -> {
            if (!clientGone && atNs < brokenNs) {
                packet.run();
            }
        });
    }
}
