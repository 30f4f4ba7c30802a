package org.cupbeam.studio.store.staff;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.cupbeam.event.Words;
import org.cupbeam.studio.store.Scope;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * Somebody of the staff who signs in by name.
 *
 * @param secret    a hash of it
 * @param scope     the studios that they look after
 * @param createdMs since when they are there, ms since 1970
 * @param changedBy who made them what they are, and {@code changedMs} when
 */
public record Account(int id, String name, String secret, Role role, Scope scope, long createdMs, String changedBy, long changedMs) {
    static final String COLUMNS = "id, name, secret, role, studios, created_ms, changed_by, changed_ms";

    static Account read(ResultSet row, StatementContext ctx) throws SQLException {
        Role role = Words.find(Role.class, row.getString(4));
        if (role == null) {
            throw new IllegalStateException("staff " + row.getInt(1) + ": no role is called " + row.getString(4)
                    + "; a later version wrote it, run that one");
        }
        return new Account(row.getInt(1), row.getString(2), row.getString(3), role, Scope.parse(row.getString(5)),
                row.getLong(6), row.getString(7), row.getLong(8));
    }

    /** An owner who looks after all there is: without one of these nobody could put things right. */
    public boolean isOwnerOfAll() {
        return role == Role.OWNER && scope.isAll();
    }

    /** Another whenever somebody who is signed in has to do so anew. */
    public String stamp() {
        return id + " " + role.word() + " " + scope.text() + " " + secret;
    }

    @Override
    public String toString() {
        return "Account[" + id + ", " + name + ", " + role + ", " + scope + "]"; // the hash is for no log
    }
}
