package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class OldStoreOnPostgresIT extends OldStoreBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
