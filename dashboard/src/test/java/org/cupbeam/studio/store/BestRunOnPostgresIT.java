package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class BestRunOnPostgresIT extends BestRunBehaviour {
    @Override
    Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
