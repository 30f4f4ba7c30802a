package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import org.cupbeam.CallsOut;
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
        try (CallsOut calls = new CallsOut()) {
            broker.start();
            Patience.stays("quiet", 1500, calls.heard()::isEmpty);
        }
    }
}
