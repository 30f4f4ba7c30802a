package org.cupbeam.studio.store;

import org.cupbeam.studio.PostgresServer;

class UsageOnPostgresIT extends UsageBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
