package org.cupbeam.studio.store.league;

import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.store.Database;

class LeagueOnPostgresIT extends LeagueBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
