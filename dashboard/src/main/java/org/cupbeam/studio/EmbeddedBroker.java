package org.cupbeam.studio;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import io.moquette.interception.AbstractInterceptHandler;
import io.moquette.interception.messages.InterceptExceptionMessage;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.List;
import java.util.Properties;
import org.cupbeam.studio.ingest.Message;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A broker in this process, for one board and for the demo. It keeps nothing on disk, so it forgets everything when it
 * stops: what must not be lost is in the lanes' journals. It listens on loopback only, and tells nobody that it runs.
 *
 * <p>Moquette 0.17 now and then miscounts who still holds a message (its issues 573, 773, 961), ends the thread that
 * serves a part of its clients, and goes on as if nothing were. Then it is started anew on the same port; lanes and host
 * come back by themselves and send again what was not stored.
 */
public final class EmbeddedBroker implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(EmbeddedBroker.class);
    private static final String LOOPBACK = "127.0.0.1";
    private static final int ENVELOPE_BYTES = 1_024;
    private static final long STOP_LIMIT_MS = 1_000;
    private static final int MOST_TRIES = 40;
    private static final long BETWEEN_TRIES_MS = 250;

    static {
        // A few messages a second: no need of arenas of memory beside the heap, nor of four threads a core.
        preset("io.netty.allocator.type", "unpooled");
        preset("io.netty.noPreferDirect", "true");
        preset("io.netty.eventLoopThreads", "2");
    }

    private final int port;
    private Server server;
    private boolean closed;

    /**
     * Starts a broker.
     *
     * @param wantedPort 0 for any that is free
     * @throws BindException when something else has the port
     */
    public EmbeddedBroker(int wantedPort) throws IOException {
        this.port = wantedPort == 0 ? freePort() : wantedPort; // it cannot be asked which one it took
        this.server = started();
    }

    /** Where clients find it, as {@code tcp://127.0.0.1:1883}. */
    public String uri() {
        return "tcp://" + LOOPBACK + ":" + port;
    }

    /**
     * Stops listening and lets go. Its network threads wait for a quiet spell, at times for more than ten seconds, in
     * which nothing is left to be done; they are not waited for longer than one.
     */
    @Override
    public synchronized void close() {
        closed = true;
        stop(server);
    }

    /** Starts it anew, since a part of it has failed. */
    synchronized void startAnew() {
        if (closed) {
            return;
        }
        LOG.warn("the broker in this process has failed in part, and is started anew; nothing that was kept is lost");
        stop(server);
        for (int tries = 0; tries < MOST_TRIES && !closed; tries++) {
            try {
                server = started();
                return;
            } catch (IOException e) {
                LOG.debug("its port is not free yet: {}", e.toString());
                pause();
            }
        }
        LOG.error("the broker in this process could not be started anew on port {}; start the studio again", port);
    }

    private Server started() throws IOException {
        Properties is = new Properties();
        is.setProperty(IConfig.HOST_PROPERTY_NAME, LOOPBACK);
        is.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(port));
        is.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
        is.setProperty("allow_zero_byte_client_id", "true"); // as a shell script's client has
        is.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
        is.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
        is.setProperty(IConfig.NETTY_MAX_BYTES_PROPERTY_NAME, Integer.toString(Message.LIMIT_BYTES + ENVELOPE_BYTES));
        Server fresh = new Server();
        try {
            fresh.startServer(new MemoryConfig(is), List.of(new Watch()));
            return fresh;
        } catch (RuntimeException e) {
            throw bindFailure(e);
        }
    }

    private IOException bindFailure(RuntimeException e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof BindException) {
                return (IOException) new BindException(LOOPBACK + ":" + port).initCause(e);
            }
        }
        throw e;
    }

    private static void stop(Server running) {
        Thread stopping = new Thread(running::stopServer, "broker-stop");
        stopping.setDaemon(true);
        stopping.setUncaughtExceptionHandler((thread, e) -> LOG.debug("stopping the broker: {}", e.toString()));
        stopping.start();
        try {
            stopping.join(STOP_LIMIT_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket any = new ServerSocket(0, 1, InetAddress.getByName(LOOPBACK))) {
            return any.getLocalPort();
        }
    }

    private static void pause() {
        try {
            Thread.sleep(BETWEEN_TRIES_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void preset(String property, String value) {
        if (System.getProperty(property) == null) {
            System.setProperty(property, value);
        }
    }

    /** Is told when one of the broker's threads has ended by a fault. */
    private final class Watch extends AbstractInterceptHandler {
        @Override
        public String getID() {
            return "watch";
        }

        @Override
        public Class<?>[] getInterceptedMessageTypes() {
            return new Class<?>[] {InterceptExceptionMessage.class};
        }

        @Override
        public void onSessionLoopError(Throwable error) {
            LOG.debug("a thread of the broker has ended", error);
            Thread anew = new Thread(EmbeddedBroker.this::startAnew, "broker-anew");
            anew.setDaemon(true);
            anew.start();
        }
    }
}
