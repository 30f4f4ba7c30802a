package org.cupbeam.studio.store.logbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.Who;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AmendingOnSqliteTest extends AmendingBehaviour {
    @TempDir
    Path folder;

    @Override
    protected Database database() {
        return Database.file(folder.resolve(UUID.randomUUID() + ".db"));
    }

    @Test
    void leavesNoTraceOfAForgottenNameInItsFiles() throws IOException {
        leavesTraces();
        assertThat(bytes()).containsIgnoringCase("zebedee");

        new PlayerBook(store).forget(1, new Who("Ines", null, 7));

        assertThat(bytes()).doesNotContainIgnoringCase("zebedee").doesNotContainIgnoringCase("zebby");
    }

    private String bytes() throws IOException {
        StringBuilder all = new StringBuilder();
        try (var files = Files.list(folder)) {
            for (Path each : files.toList()) {
                all.append(Files.readString(each, StandardCharsets.ISO_8859_1));
            }
        }
        return all.toString();
    }
}
