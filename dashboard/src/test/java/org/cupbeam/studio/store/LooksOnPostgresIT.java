package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class LooksOnPostgresIT extends LooksBehaviour {
    @Override
    Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
