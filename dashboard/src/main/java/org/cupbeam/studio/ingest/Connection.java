package org.cupbeam.studio.ingest;

import java.io.IOException;
import java.util.List;

/**
 * One client of an MQTT broker, used again and again: after a loss, {@link #connect} may be called once more. All calls
 * come from one thread and block no longer than their own time limits; none may come from a {@link Receiver}.
 */
public interface Connection extends AutoCloseable {
    /** What the connection tells; called on its own threads, and must return at once, whatever happens. */
    interface Receiver {
        void message(Message message);

        void lost(String why);
    }

    /** Connects, keeping the session; the receiver is used until the next call. */
    void connect(Receiver receiver) throws IOException;

    /** Asks for these filters at QoS 1. */
    void subscribe(List<String> filters) throws IOException;

    /** Publishes at QoS 1 and waits for the broker to have it. */
    void publish(Message message, boolean retained) throws IOException;

    /** Drops a connection that is in doubt, so that {@link #connect} may be called. */
    void abandon();

    /** Says goodbye where it can, and frees everything. */
    @Override
    void close();
}
