package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What SQLite plans queries by is gathered while the host runs, since one that is killed closes nothing. */
class PlansTest {
    @TempDir
    Path folder;

    @Test
    void areKeptUpEveryHourOfWritingAndAtEachStart() {
        AtomicLong nowNs = new AtomicLong(-5);
        Database database = Database.file(folder.resolve("s.db"));
        Store killed = Store.open(database, nowNs::get);
        killed.writing(h -> {
            for (int i = 1; i <= 2_000; i++) {
                h.execute("INSERT INTO studio (id, name) VALUES (?, ?)", i, "s" + i);
            }
        });
        assertThat(gathered(killed)).isZero();

        nowNs.addAndGet(Store.TIDY_EVERY_NS);
        killed.writing(h -> h.execute("INSERT INTO setting (name, value, set_ms) VALUES ('a', 'b', 1)"));
        assertThat(gathered(killed)).as("after an hour").isPositive();

        killed.writing(h -> h.execute("DELETE FROM sqlite_stat1"));
        try (Store next = Store.open(database)) { // the first one was never closed
            assertThat(gathered(next)).as("at the next start").isPositive();
        }
        killed.close();
    }

    private static int gathered(Store store) {
        return store.read(h -> h.select("SELECT count(*) FROM sqlite_master WHERE name = 'sqlite_stat1'").mapTo(Integer.class)
                .one() == 0 ? 0 : h.select("SELECT count(*) FROM sqlite_stat1 WHERE tbl = 'studio'").mapTo(Integer.class).one());
    }
}
