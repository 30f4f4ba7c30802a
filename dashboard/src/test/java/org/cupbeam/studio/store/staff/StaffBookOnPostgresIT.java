package org.cupbeam.studio.store.staff;

import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.store.Database;

class StaffBookOnPostgresIT extends StaffBookBehaviour {
    @Override
    protected Database database() {
        return Database.at(PostgresServer.emptyDatabase());
    }
}
