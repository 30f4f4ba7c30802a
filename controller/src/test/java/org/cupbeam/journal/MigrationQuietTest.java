package org.cupbeam.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Proxy;
import java.net.ProxySelector;
import java.net.SocketAddress;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import org.flywaydb.core.FlywayTelemetryManager;
import org.flywaydb.core.extensibility.Plugin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MigrationQuietTest {
    @TempDir
    Path folder;

    @Test
    void theMigrationToolCallsNobody() throws Exception {
        List<URI> called = new ArrayList<>();
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
            Notes.open(folder.resolve("journal.db")).close();
        } finally {
            ProxySelector.setDefault(before);
        }
        assertThat(called).isEmpty();
    }

    @Test
    void theOnlyTelemetryOfTheMigrationToolOnThisClasspathIsTheOneThatDoesNothing() {
        List<String> telemetry = ServiceLoader.load(Plugin.class).stream().map(ServiceLoader.Provider::type)
                .filter(FlywayTelemetryManager.class::isAssignableFrom).map(Class::getSimpleName).toList();
        assertThat(telemetry).containsExactly("NullFlywayTelemetryManager");
    }
}
