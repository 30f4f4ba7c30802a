package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class SumsOnPostgresIT extends SumsBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }

    @Override
    int sequences() {
        return 3;
    }
}
