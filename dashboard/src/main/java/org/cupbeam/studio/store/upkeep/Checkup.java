package org.cupbeam.studio.store.upkeep;

import java.io.IOException;
import java.nio.file.Files;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Migrations;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * What a store is like.
 *
 * @param troubles what is wrong with it, in words; none where nothing is
 * @param events   that it holds
 * @param attempts of them, and those that were imported
 * @param missing  events that lanes could not send any more, as noted
 * @param waiting  events that are here, though some before them are not: their lanes are asked for those
 * @param schema   of its tables, as 11; null where there are none
 */
public record Checkup(List<String> troubles, long events, long attempts, long missing, long waiting, String schema) {
    private static final int MOST_OF_SQLITE = 20;

    public Checkup {
        troubles = List.copyOf(troubles);
    }

    /** Looks through a store, which may be written to meanwhile, and changes nothing. */
    public static Checkup of(Database database) {
        Troubles troubles = new Troubles();
        if (database instanceof Database.Sqlite sqlite && isEmpty(sqlite)) {
            troubles.add("is empty, 0 bytes long, as no store is");
            return none(troubles);
        }
        try (Handle h = Jdbi.create(database::onlooker).open()) {
            return h.inTransaction(same -> looked(same, database, troubles));
        } catch (RuntimeException e) {
            troubles.add(rootOf(e).getMessage());
            return none(troubles);
        }
    }

    public boolean isSound() {
        return troubles.isEmpty();
    }

    /** Whether more than its pages could be looked at: tables of an earlier version are not known here. */
    public boolean isOfThisVersion() {
        return Migrations.LATEST.equals(schema);
    }

    private static Checkup looked(Handle h, Database database, Troubles troubles) {
        if (database instanceof Database.Sqlite) {
            pages(h, troubles);
        }
        if (!troubles.all().isEmpty()) {
            return none(troubles);
        }
        String schema = schema(h);
        if (schema == null) {
            troubles.add("holds no store");
            return none(troubles);
        }
        if (Migrations.LATEST.equals(schema)) {
            new Invariants(h, troubles).hold();
        }
        return new Checkup(troubles.all(), number(h, "SELECT count(*) FROM event"), number(h, "SELECT count(*) FROM attempt"),
                number(h, "SELECT coalesce(sum(to_sequence - from_sequence + 1), 0) FROM missing"),
                Migrations.LATEST.equals(schema) ? number(h, "SELECT count(*) FROM event e JOIN journal j ON j.id = e.journal_id "
                        + "WHERE e.sequence > j.stored") : 0, schema);
    }

    private static void pages(Handle h, Troubles troubles) {
        h.createQuery("PRAGMA integrity_check(" + MOST_OF_SQLITE + ")").mapTo(String.class).list().stream()
                .filter(each -> !"ok".equals(each)).forEach(troubles::add);
        h.createQuery("SELECT \"table\" || ': ' || count(*) || ' rows are about something that is not there' "
                + "FROM pragma_foreign_key_check GROUP BY \"table\"").mapTo(String.class).list().forEach(troubles::add);
    }

    private static String schema(Handle h) {
        try {
            return h.createQuery("SELECT version FROM flyway_schema_history WHERE version IS NOT NULL "
                    + "ORDER BY installed_rank DESC LIMIT 1").mapTo(String.class).findOne().orElse(null);
        } catch (RuntimeException noSuchTable) {
            return null;
        }
    }

    private static long number(Handle h, String sql) {
        return h.createQuery(sql).mapTo(Long.class).one();
    }

    private static Checkup none(Troubles troubles) {
        return new Checkup(troubles.all(), 0, 0, 0, 0, null);
    }

    private static boolean isEmpty(Database.Sqlite sqlite) {
        try {
            return Files.size(sqlite.file()) == 0;
        } catch (IOException e) {
            return false; // SQLite will say
        }
    }

    private static Throwable rootOf(Throwable e) {
        return e.getCause() == null || e instanceof SQLException ? e : rootOf(e.getCause());
    }

    /** What is wrong, in words, so many as somebody reads. */
    static final class Troubles {
        private static final int MOST = 20;
        private static final int LONGEST = 200;

        private final List<String> said = new ArrayList<>();
        private long more;

        void add(String trouble) {
            String line = String.valueOf(trouble).replaceAll("\\s+", " ").strip();
            if (said.size() < MOST) {
                said.add(line.length() <= LONGEST ? line : line.substring(0, LONGEST) + "…");
            } else {
                more++;
            }
        }

        List<String> all() {
            List<String> all = new ArrayList<>(said);
            if (more > 0) {
                all.add("and " + more + " more");
            }
            return all;
        }
    }
}
