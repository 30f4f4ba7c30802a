package org.cupbeam.studio.store.logbook;

import java.nio.file.Path;
import java.util.UUID;
import org.cupbeam.studio.store.Database;
import org.junit.jupiter.api.io.TempDir;

class ImportingOnSqliteTest extends ImportingBehaviour {
    @TempDir
    Path folder;

    @Override
    protected Database database() {
        return Database.file(folder.resolve(UUID.randomUUID() + ".db"));
    }
}
