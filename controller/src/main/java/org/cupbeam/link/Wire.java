package org.cupbeam.link;

import java.util.List;

/**
 * One client's line to an MQTT broker. Everything here only begins something and returns, except {@link #drop} and
 * {@link #leave}, which take a few seconds at most; what comes of it is heard from {@link #next}. One thread uses it.
 */
interface Wire extends AutoCloseable {

    /** Begins to connect; {@link News.Connected} or {@link News.Failed} will tell. */
    void connect(Message will);

    /** Begins to subscribe, once connected; {@link News.Subscribed} or {@link News.Failed} will tell. */
    void subscribe(List<String> topics);

    /** Begins to publish at QoS 1; {@link News.Acknowledged} with the tag, or {@link News.Failed}, will tell. */
    void publish(long tag, Message message);

    /** Lets go of the broker at once, whatever is under way, without a word to it. Nothing more comes of that. */
    void drop();

    /** Takes leave of the broker, so that it does not send the last will. */
    void leave();

    /** What happened next; null where nothing has yet. */
    News next();

    /** How many messages came while too many waited to be read, and are gone. */
    long overrun();

    /** Lets go of everything. */
    @Override
    void close();

    /**
     * A message.
     *
     * @param retained sent: whether the broker keeps it; received: whether the broker had kept it
     */
    record Message(String topic, byte[] payload, boolean retained) {
    }

    /** What happened. */
    sealed interface News {
        /** Connected, with a clean session. */
        record Connected() implements News {
        }

        /** Subscribed to all that was asked. */
        record Subscribed() implements News {
        }

        /** The broker has taken the message of this tag on. */
        record Acknowledged(long tag) implements News {
        }

        /** A message came. */
        record Received(Message message) implements News {
        }

        /** The connection is no more, or never was, or is of no use. */
        record Failed(String reason) implements News {
        }
    }

    /** Makes a line that wakes its user when there is news. */
    @FunctionalInterface
    interface Maker {
        Wire make(Runnable wake);
    }
}
