package org.cupbeam.studio;

import java.io.IOException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.provider.Arguments;

/** The brokers that the host has to get on with: the one inside, and a real Mosquitto. */
final class Brokers {
    /** A broker that a test has started. */
    interface Running extends AutoCloseable {
        String uri();

        @Override
        void close() throws IOException;
    }

    /** Starts one on a port; 0 for any. */
    interface Kind {
        Running start(int port) throws IOException;
    }

    private Brokers() {
    }

    static Stream<Arguments> both() {
        return Stream.of(Arguments.of(Named.of("embedded", (Kind) Brokers::embedded)),
                Arguments.of(Named.of("mosquitto", (Kind) Brokers::mosquitto)));
    }

    static int port(Running broker) {
        return Integer.parseInt(broker.uri().substring(broker.uri().lastIndexOf(':') + 1));
    }

    private static Running embedded(int port) throws IOException {
        EmbeddedBroker broker = new EmbeddedBroker(port);
        return running(broker.uri(), broker::close);
    }

    private static Running mosquitto(int port) throws IOException {
        Mosquitto broker = new Mosquitto(port);
        return running(broker.uri(), broker::close);
    }

    private interface Stop {
        void run() throws IOException;
    }

    private static Running running(String uri, Stop stop) {
        return new Running() {
            @Override
            public String uri() {
                return uri;
            }

            @Override
            public void close() throws IOException {
                stop.run();
            }
        };
    }
}
