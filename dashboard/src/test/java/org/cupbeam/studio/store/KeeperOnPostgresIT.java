package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class KeeperOnPostgresIT extends KeeperBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
