package org.cupbeam.studio.store;

import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.io.TempDir;

class RescoringOnSqliteTest extends RescoringBehaviour {
    @TempDir
    Path folder;

    @Override
    protected Database database() {
        return Database.file(folder.resolve(UUID.randomUUID() + ".db"));
    }
}
