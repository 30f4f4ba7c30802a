package org.cupbeam.studio.store.upkeep;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.BadMessage;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.NotNow;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Makes a store anew of what was found in a damaged one: names first, so that they keep their numbers; then the events, as if
 * they came from their lanes, of which everything follows that follows from events; then what does not.
 */
final class Rebuilding {
    private static final int AT_ONCE = 500;

    /** Names, and what else hangs on nothing. Whatever a table will not have is left. */
    private static final List<String> BEFORE = List.of(
            "INSERT OR IGNORE INTO studio (id, name) SELECT id, name FROM old.studio WHERE " + number("id") + named("name", 32),
            "INSERT OR IGNORE INTO lane (id, studio_id, name) SELECT id, studio_id, name FROM old.lane WHERE " + number("id")
                    + named("name", 32) + " AND studio_id IN (SELECT id FROM studio)",
            "INSERT OR IGNORE INTO journal (id, lane_id, name, stored, seen_ms) SELECT id, lane_id, name, 0, seen_ms FROM old.journal WHERE "
                    + number("id") + named("name", 64) + " AND lane_id IN (SELECT id FROM lane)",
            "INSERT OR IGNORE INTO player (id, name, name_key, hand, units, created_ms, forgotten_ms, remark, putts_changed) "
                    + "SELECT id, name, name_key, hand, units, created_ms, forgotten_ms, remark, coalesce(putts_changed, 0) FROM old.player WHERE "
                    + number("id"),
            "UPDATE player SET merged_into = (SELECT o.merged_into FROM old.player o WHERE o.id = player.id AND o.merged_into IN (SELECT id FROM player))",
            "INSERT OR IGNORE INTO player_alias (name_key, player_id) SELECT name_key, player_id FROM old.player_alias "
                    + "WHERE player_id IN (SELECT id FROM player)",
            // what stands in events in place of a name that was forgotten
            "INSERT OR IGNORE INTO player_alias (name_key, player_id) SELECT 'forgotten player ' || id, id FROM player WHERE forgotten_ms IS NOT NULL",
            "INSERT OR IGNORE INTO drill (id, name, terms, limit_mm) SELECT id, name, terms, limit_mm FROM old.drill WHERE " + number("id"),
            "INSERT OR IGNORE INTO setting (name, value, set_ms) SELECT name, value, set_ms FROM old.setting WHERE name IS NOT NULL",
            "INSERT OR IGNORE INTO shelf_drill (id, name_key, terms, version, changed_by, changed_ms, gone_ms, studios) SELECT id, name_key, terms, "
                    + "version, changed_by, changed_ms, gone_ms, studios FROM old.shelf_drill WHERE " + number("id"),
            "INSERT OR IGNORE INTO staff (id, name, name_key, secret, role, studios, created_ms, changed_by, changed_ms, gone_ms) SELECT id, name, name_key, "
                    + "secret, role, studios, created_ms, changed_by, changed_ms, gone_ms FROM old.staff WHERE " + number("id"),
            "INSERT OR IGNORE INTO player_made (studio, player_id) SELECT studio, player_id FROM old.player_made WHERE player_id IN (SELECT id FROM player)",
            "INSERT OR IGNORE INTO league (id, name, terms, breaks, slope, zone, first_day, weeks, runs, version, changed_by, changed_ms, gone_ms) "
                    + "SELECT id, name, terms, breaks, slope, zone, first_day, weeks, runs, version, changed_by, changed_ms, gone_ms FROM old.league WHERE "
                    + number("id"),
            "INSERT OR IGNORE INTO league_studio (league_id, studio_id) SELECT league_id, studio_id FROM old.league_studio WHERE league_id IN "
                    + "(SELECT id FROM league) AND studio_id IN (SELECT id FROM studio)",
            "INSERT OR IGNORE INTO dead_letter (id, digest, topic, reason, payload, times, first_ms, last_ms) SELECT id, digest, topic, "
                    + "reason, payload, times, first_ms, last_ms FROM old.dead_letter WHERE " + number("id"));

    private final Path half;
    private final Path finds;

    /**
     * Makes it.
     *
     * @param half  where no file is yet
     * @param finds what was found
     */
    Rebuilding(Path half, Path finds) {
        this.half = half;
        this.finds = finds;
    }

    /** @return what was done about numbers of which there is no event */
    Gaps all() throws SQLException {
        with(h -> BEFORE.forEach(h::execute));
        try (Store store = Store.open(Database.file(half)); Handle found = Jdbi.create(Database.file(finds)::reader).open()) {
            replay(new Keeper(store), found);
        }
        Gaps gaps = new Gaps();
        with(h -> {
            CarriedOver.all(h);
            gaps.note(h);
        });
        return gaps;
    }

    /** A number that a row can have. */
    private static String number(String column) {
        return column + " BETWEEN 1 AND 1000000000";
    }

    private static String named(String column, int longest) {
        return " AND length(" + column + ") BETWEEN 1 AND " + longest + " AND " + column + " NOT GLOB '*[^a-z0-9-]*'";
    }

    /** In one transaction, with what was found under the name {@code old}. */
    private void with(java.util.function.Consumer<Handle> deed) throws SQLException {
        try (Handle h = Jdbi.create(Database.file(half)::writer).open()) {
            h.execute("ATTACH ? AS old", finds.toString());
            h.useTransaction(deed::accept);
        }
    }

    private static void replay(Keeper keeper, Handle found) {
        List<Arrival> next = new ArrayList<>();
        found.createQuery("SELECT envelope, received_ms FROM event ORDER BY studio, lane, journal, sequence").map((row, ctx) ->
                arrival(row.getString(1), row.getLong(2))).forEach(each -> {
                    next.add(each);
                    if (next.size() == AT_ONCE) {
                        keep(keeper, next);
                        next.clear();
                    }
                });
        keep(keeper, next);
    }

    private static Arrival arrival(String envelope, long receivedMs) {
        try {
            return Arrival.read(envelope.getBytes(StandardCharsets.UTF_8), Instant.ofEpochMilli(receivedMs));
        } catch (BadMessage e) {
            throw new IllegalStateException("it was read before", e);
        }
    }

    private static void keep(Keeper keeper, List<Arrival> arrivals) {
        try {
            keeper.commit(new Batch(arrivals, List.of(), List.of()));
        } catch (NotNow e) {
            throw e;
        } catch (RuntimeException e) {
            arrivals.forEach(each -> one(keeper, each));
        }
    }

    /** As a host does with an event that it cannot take in. */
    private static void one(Keeper keeper, Arrival arrival) {
        try {
            keeper.commit(new Batch(List.of(arrival), List.of(), List.of()));
        } catch (NotNow e) {
            throw e;
        } catch (RuntimeException e) {
            keeper.commit(new Batch(List.of(arrival.onlyKept(e.toString())), List.of(), List.of()));
        }
    }
}
