package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class ShelfOnPostgresIT extends ShelfBehaviour {
    @Override
    Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
