package org.cupbeam.studio.store;

import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.io.TempDir;

class ShelfOnSqliteTest extends ShelfBehaviour {
    @TempDir
    Path folder;

    @Override
    Database database() {
        return Database.file(folder.resolve(UUID.randomUUID() + ".db"));
    }
}
