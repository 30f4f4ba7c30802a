package org.cupbeam.studio.store;

import java.sql.SQLException;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.transaction.TransactionException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * Whose fault it is that something was not written: the database's, which may take it later (a full disk, a server that is
 * gone), or that of what was to be written, which it will never take. When in doubt it is the database's: whoever sends waits
 * then, and nothing is lost.
 */
final class Ailment {
    private Ailment() {
    }

    /**
     * What to throw in place of what a database's driver threw.
     *
     * @param onAilment is run where it was the database's own
     */
    static RuntimeException orNot(String store, RuntimeException e, Runnable onAilment) {
        String words = e instanceof StoreTrouble ? null : words(e);
        if (words == null) {
            return e;
        }
        onAilment.run();
        return new StoreTrouble("store " + store + ": " + words, e);
    }

    /** In words, with what would do; null where the database is well. */
    static String words(Throwable e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLiteException sqlite) {
                return words(sqlite);
            }
            if (cause instanceof SQLException sql) {
                return words(sql);
            }
        }
        return e instanceof ConnectionException || e instanceof TransactionException ? "cannot be written (" + e.getMessage() + ")" : null;
    }

    private static String words(SQLiteException e) {
        String said = " (" + e.getMessage() + ")";
        return switch (primary(e.getResultCode())) {
            case SQLITE_CONSTRAINT, SQLITE_TOOBIG, SQLITE_MISMATCH, SQLITE_RANGE, SQLITE_ERROR -> null;
            case SQLITE_FULL -> "its disk is full" + said + "; make room";
            case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM, SQLITE_AUTH -> "cannot be written" + said
                    + "; see that this user may write it and its folder, and that the disk is not mounted read-only";
            case SQLITE_CORRUPT, SQLITE_NOTADB -> "is damaged" + said + "; stop the studio, then see 'store check' and 'store repair'";
            case SQLITE_BUSY, SQLITE_LOCKED -> "another program has it open" + said + "; close that";
            default -> "its disk fails" + said + "; look after it, and copy the store while it can be read";
        };
    }

    /** Extended codes keep the code that they belong to in their lowest byte. */
    private static SQLiteErrorCode primary(SQLiteErrorCode code) {
        return SQLiteErrorCode.getErrorCode(code.code & 0xFF);
    }

    /** PostgreSQL's classes of SQLSTATE (its handbook, appendix A): data, its limits and constraints are the writer's. */
    private static String words(SQLException e) {
        String state = String.valueOf(e.getSQLState());
        if (state.startsWith("21") || state.startsWith("22") || state.startsWith("23") || state.startsWith("54")) {
            return null;
        }
        return state.startsWith("53100") ? "its server's disk is full (" + e.getMessage() + "); make room there"
                : "cannot be written (" + e.getMessage() + "); see that its server runs and may write";
    }
}
