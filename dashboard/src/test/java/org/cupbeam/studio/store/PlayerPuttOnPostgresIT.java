package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class PlayerPuttOnPostgresIT extends PlayerPuttBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
