package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class KeeperOnPostgresIT extends KeeperBehaviour {
    @Override
    Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
