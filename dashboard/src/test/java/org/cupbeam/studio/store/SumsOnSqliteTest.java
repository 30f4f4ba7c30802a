package org.cupbeam.studio.store;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

class SumsOnSqliteTest extends SumsBehaviour {
    @TempDir
    Path folder;
    private int made;

    @Override
    protected Database database() {
        return Database.file(folder.resolve("s" + made++ + ".db"));
    }
}
