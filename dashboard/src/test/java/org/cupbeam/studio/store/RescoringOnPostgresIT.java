package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class RescoringOnPostgresIT extends RescoringBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
