package org.cupbeam.studio;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.Properties;
import org.cupbeam.studio.ingest.Message;

/**
 * A broker in this process, for one board and for the demo. It keeps nothing on disk, so it forgets everything when it
 * stops: what must not be lost is in the lanes' journals. It listens on loopback only, and tells nobody that it runs.
 */
public final class EmbeddedBroker implements AutoCloseable {
    private static final String LOOPBACK = "127.0.0.1";
    private static final int ENVELOPE_BYTES = 1_024;

    static {
        // A few messages a second: no need of arenas of memory beside the heap, nor of four threads a core.
        preset("io.netty.allocator.type", "unpooled");
        preset("io.netty.noPreferDirect", "true");
        preset("io.netty.eventLoopThreads", "2");
        preset("io.netty.noUnsafe", "true");
    }

    private final Server server = new Server();
    private final int port;

    /**
     * Starts a broker.
     *
     * @param wantedPort 0 for any that is free
     * @throws BindException when something else has the port
     */
    public EmbeddedBroker(int wantedPort) throws IOException {
        this.port = wantedPort == 0 ? freePort() : wantedPort; // it cannot be asked which one it took
        Properties is = new Properties();
        is.setProperty(IConfig.HOST_PROPERTY_NAME, LOOPBACK);
        is.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(port));
        is.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
        is.setProperty("allow_zero_byte_client_id", "true"); // as a shell script's client has
        is.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
        is.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
        is.setProperty(IConfig.NETTY_MAX_BYTES_PROPERTY_NAME, Integer.toString(Message.LIMIT_BYTES + ENVELOPE_BYTES));
        try {
            server.startServer(new MemoryConfig(is));
        } catch (RuntimeException e) {
            throw bindFailure(e);
        }
    }

    /** Where clients find it, as {@code tcp://127.0.0.1:1883}. */
    public String uri() {
        return "tcp://" + LOOPBACK + ":" + port;
    }

    @Override
    public void close() {
        server.stopServer();
    }

    private static int freePort() throws IOException {
        try (ServerSocket any = new ServerSocket(0, 1, InetAddress.getByName(LOOPBACK))) {
            return any.getLocalPort();
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

    private static void preset(String property, String value) {
        if (System.getProperty(property) == null) {
            System.setProperty(property, value);
        }
    }
}
