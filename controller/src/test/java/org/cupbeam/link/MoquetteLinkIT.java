package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.Proxy;
import java.net.ProxySelector;
import java.net.SocketAddress;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;

/** The link over the embedded broker. */
class MoquetteLinkIT extends LinkContract {
    @Override
    Broker broker() throws Exception {
        return new MoquetteBroker();
    }

    /** At QoS 1, Moquette 0.17 does not. */
    @Override
    boolean marksRetained() {
        return false;
    }

    @Test
    void theEmbeddedBrokerIsToldToCallNobodyAndToKeepNothing() {
        MemoryConfig settings = new MemoryConfig(MoquetteBroker.settings(1));
        assertThat(settings.boolProp(IConfig.ENABLE_TELEMETRY_NAME, true)).isFalse();
        assertThat(settings.boolProp(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, true)).isFalse();
    }

    @Test
    void theEmbeddedBrokerCallsNobody() throws Exception {
        List<URI> called = new CopyOnWriteArrayList<>();
        ProxySelector before = ProxySelector.getDefault();
        ProxySelector.setDefault(new ProxySelector() {
            @Override
            public List<Proxy> select(URI uri) {
                called.add(uri);
                return List.of(Proxy.NO_PROXY);
            }

            @Override
            public void connectFailed(URI uri, SocketAddress address, IOException e) {
                called.add(uri);
            }
        });
        try {
            broker.start();
            Patience.stays("quiet", 1500, called::isEmpty);
        } finally {
            ProxySelector.setDefault(before);
        }
    }
}
