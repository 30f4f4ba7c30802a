package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class ReadingAgainOnPostgresIT extends ReadingAgainBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }

    @Override
    int evenings() {
        return 8;
    }
}
