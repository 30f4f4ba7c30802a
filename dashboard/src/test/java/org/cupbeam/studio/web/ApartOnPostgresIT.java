package org.cupbeam.studio.web;

import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.store.Database;

class ApartOnPostgresIT extends ApartBehaviour {
    @Override
    Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
