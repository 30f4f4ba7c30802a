package org.cupbeam.studio.store.staff;

import java.nio.file.Path;
import java.util.UUID;
import org.cupbeam.studio.store.Database;
import org.junit.jupiter.api.io.TempDir;

class StaffBookOnSqliteTest extends StaffBookBehaviour {
    @TempDir
    Path folder;

    @Override
    protected Database database() {
        return Database.file(folder.resolve(UUID.randomUUID() + ".db"));
    }
}
