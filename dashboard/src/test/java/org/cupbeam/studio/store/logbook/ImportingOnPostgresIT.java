package org.cupbeam.studio.store.logbook;

import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.store.Database;

class ImportingOnPostgresIT extends ImportingBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
