package org.cupbeam.studio.store;

import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.io.TempDir;

class ReadingAgainOnSqliteTest extends ReadingAgainBehaviour {
    @TempDir
    Path folder;

    @Override
    protected Database database() {
        return Database.file(folder.resolve(UUID.randomUUID() + ".db"));
    }

    @Override
    int evenings() {
        return 60;
    }
}
