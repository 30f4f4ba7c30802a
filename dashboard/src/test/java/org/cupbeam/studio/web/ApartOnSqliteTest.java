package org.cupbeam.studio.web;

import java.util.UUID;
import org.cupbeam.studio.store.Database;

class ApartOnSqliteTest extends ApartBehaviour {
    @Override
    Database database() {
        return Database.file(folder.resolve(UUID.randomUUID() + ".db"));
    }
}
