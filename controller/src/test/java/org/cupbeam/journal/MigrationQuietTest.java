package org.cupbeam.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.ServiceLoader;
import org.cupbeam.CallsOut;
import org.flywaydb.core.FlywayTelemetryManager;
import org.flywaydb.core.extensibility.Plugin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MigrationQuietTest {
    @TempDir
    Path folder;

    @Test
    void theMigrationToolCallsNobody() throws Exception {
        try (CallsOut calls = new CallsOut()) {
            Notes.open(folder.resolve("journal.db")).close();
            assertThat(calls.heard()).isEmpty();
        }
    }

    @Test
    void theOnlyTelemetryOfTheMigrationToolOnThisClasspathIsTheOneThatDoesNothing() {
        List<String> telemetry = ServiceLoader.load(Plugin.class).stream().map(ServiceLoader.Provider::type)
                .filter(FlywayTelemetryManager.class::isAssignableFrom).map(Class::getSimpleName).toList();
        assertThat(telemetry).containsExactly("NullFlywayTelemetryManager");
    }
}
