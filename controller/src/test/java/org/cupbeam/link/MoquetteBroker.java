package org.cupbeam.link;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.util.Properties;

/** Moquette in this process: on loopback, keeping nothing, telling nobody. */
final class MoquetteBroker implements Broker {
    private final int port;
    private Server server;

    MoquetteBroker() throws IOException {
        port = StubBroker.freePort();
    }

    static Properties settings(int port) {
        Properties settings = new Properties();
        settings.setProperty(IConfig.HOST_PROPERTY_NAME, "127.0.0.1");
        settings.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(port));
        settings.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
        settings.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
        settings.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
        settings.setProperty(IConfig.NETTY_MAX_BYTES_PROPERTY_NAME, "70000");
        return settings;
    }

    @Override
    public String uri() {
        return "tcp://127.0.0.1:" + port;
    }

    @Override
    public void start() throws IOException {
        server = new Server();
        server.startServer(new MemoryConfig(settings(port)));
    }

    @Override
    public void kill() {
        if (server != null) {
            server.stopServer();
            server = null;
        }
    }
}
