package org.cupbeam.studio.store.upkeep;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.studio.lease.Pen;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.sums.Sum;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Sums that were made anew.
 *
 * @param what     its rows, in words
 * @param rows     that there are now
 * @param differed of these, and of those that there were, how many were not as they must be
 */
public record Rebuilt(String what, long rows, long differed) {

    /** Makes all of a store's sums anew, a transaction each; whoever else writes waits for each. */
    public static List<Rebuilt> all(Database database) {
        Store.open(database).close(); // brought up to this version
        List<Rebuilt> all = new ArrayList<>();
        try (Handle h = Jdbi.create(database::patient).open()) {
            Pen pen = new Pen();
            for (Sum each : Sum.ALL) {
                all.add(h.inTransaction(same -> one(same, each, database.isShared() ? pen : null)));
            }
        }
        return all;
    }

    private static Rebuilt one(Handle h, Sum sum, Pen penOrNull) {
        if (penOrNull != null) {
            penOrNull.take(h);
        }
        long differed = sum.differences(h);
        return new Rebuilt(sum.what(), sum.make(h), differed);
    }
}
