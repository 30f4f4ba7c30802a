package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.store.logbook.AttemptRow;
import org.cupbeam.studio.store.logbook.Attempts;
import org.cupbeam.studio.store.logbook.RunRow;
import org.cupbeam.studio.store.logbook.Runs;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleConsumer;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;

/** What becomes of a store that another version wrote, whichever database it lives in. */
abstract class OldStoreBehaviour extends StoreFixture {
    private static final long AT_MS = 1_795_629_600_000L;
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    @Test
    void aStoreThatOutlivesItsSchemaByThreeVersionsOpens() {
        int latest = versions(database);
        Database old = database();
        Migrations.run(old, Integer.toString(latest - 3));
        Event started = lane.starts("r1", null, "Ada", 1);
        Event missed = lane.misses("r1", null, "Ada", 1, 310.5);
        write(old, h -> filledAsItWasThen(h, started, missed));

        try (Store opened = Store.open(old)) {
            assertThat(versions(old)).isEqualTo(latest);
            RunRow run = opened.read(h -> Runs.one(h, 4)).orElseThrow();
            assertThat(run).extracting(RunRow::player, RunRow::drill, RunRow::startedMs).containsExactly("Ada", "Ladder", AT_MS);
            assertThat(run.result()).isEqualTo(new RunRow.Result(3, AT_MS + 9_000, EndedBy.OUT_OF_BALLS, 0, 1, 0, 310.5, null));
            List<AttemptRow> putts = opened.read(h -> Attempts.ofRun(h, 4));
            assertThat(putts).hasSize(1);
            assertThat(putts.get(0).putt().finishMm()).isEqualTo(310.5);
            assertThat(putts.get(0).counts()).isTrue();
            List<Played.OnLane> played = opened.read(h -> LaneQuarter.between(h, Sight.ALL, AT_MS - 900_000, AT_MS + 900_000).lanes());
            assertThat(played).containsExactly(new Played.OnLane(1, 77, 1, 0));
            List<String> envelopes = opened.read(h -> h.select("SELECT envelope FROM event ORDER BY sequence")
                    .mapTo(String.class).list());
            assertThat(envelopes).containsExactly(text(started), text(missed));
            Keeper its = new Keeper(opened);
            its.commit(batch(List.of(arrival(started, NOW), arrival(missed, NOW), arrival(lane.holes("r1", null, "Ada", 1), NOW))));
            List<AttemptRow> after = opened.read(h -> Attempts.ofRun(h, 4));
            assertThat(after).as("old ones once, and a new one after them").hasSize(2);
        }
    }

    @Test
    void aStoreOfANewerVersionIsRefusedInPlainWordsAndLeftAsItIs() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        store.close();
        String latest = Integer.toString(versions(database));
        write(database, h -> h.execute("UPDATE flyway_schema_history SET version = '999' WHERE version = ?", latest));
        String before = everything(database);

        assertThatThrownBy(() -> Store.open(database)).isInstanceOf(StoreTrouble.class)
                .hasMessageContaining("newer version of Cupbeam (its schema is 999, this version knows up to ")
                .hasMessageContaining("nothing in it was changed");

        assertThat(everything(database)).isEqualTo(before);
        write(database, h -> h.execute("UPDATE flyway_schema_history SET version = ? WHERE version = '999'", latest));
        store = Store.open(database);
        assertThat(count("attempt")).isEqualTo(1);
    }

    /** The columns that there were three versions ago, written by hand, as that version's own statements did. */
    private void filledAsItWasThen(Handle h, Event started, Event missed) {
        h.execute("INSERT INTO studio (id, name) VALUES (1, 'home')");
        h.execute("INSERT INTO lane (id, studio_id, name) VALUES (1, 1, 'one')");
        h.execute("INSERT INTO journal (id, lane_id, name, stored, seen_ms) VALUES (1, 1, 'j1', 2, ?)", AT_MS);
        h.execute("INSERT INTO boot (id, journal_id, name, first_sequence, wall_ms, monotonic_ns) VALUES (1, 1, 'boot-1', 1, ?, 0)",
                AT_MS);
        for (Event each : List.of(started, missed)) {
            h.execute("INSERT INTO event (journal_id, sequence, type, boot_id, monotonic_ns, synchronised, at_ms, received_ms, "
                    + "envelope) VALUES (1, ?, ?, 1, 0, 1, ?, ?, ?)", each.sequence(), each.data().type(), AT_MS, AT_MS, text(each));
        }
        h.execute("INSERT INTO player (id, name, name_key, created_ms) VALUES (2, 'Ada', 'ada', ?)", AT_MS);
        h.execute("INSERT INTO drill (id, name, terms, limit_mm) VALUES (3, 'Ladder', ?, 914.4)", DrillJson.text(ScriptedLane.LADDER));
        h.execute("INSERT INTO run (id, journal_id, lane_id, name, player_id, drill_id, play_order, breaks, slope, limit_mm, "
                + "started_sequence, started_ms, ended_sequence, ended_ms, ended_by, stations_cleared, attempts, holed, mean_miss_mm) "
                + "VALUES (4, 1, 1, 'r1', 2, 3, 1, 'straight', 'level', 914.4, 1, ?, 3, ?, 'out-of-balls', 0, 1, 0, 310.5)",
                AT_MS, AT_MS + 9_000);
        h.execute("INSERT INTO attempt (id, journal_id, sequence, lane_id, at_ms, run_id, player_id, drill_id, station, station_mm, "
                + "visit, ball, balls_left, holed, finish_mm, finish_sd_mm, overshoot, rim, entered) "
                + "VALUES (5, 1, 2, 1, ?, 4, 2, 3, 1, 914.4, 1, 1, 5, 0, 310.5, 8.5, 0, 0, 0)", AT_MS);
        h.execute("INSERT INTO lane_quarter (lane_id, quarter, putts, holed, first_ms, last_ms, play_ms) VALUES (1, ?, 1, 0, ?, ?, 77)",
                AT_MS / 900_000, AT_MS, AT_MS);
    }

    private static int versions(Database of) {
        try (Handle h = Jdbi.create(of::writer).open()) {
            return h.select("SELECT max(CAST(version AS INTEGER)) FROM flyway_schema_history").mapTo(Integer.class).one();
        }
    }

    private static void write(Database to, HandleConsumer<RuntimeException> what) {
        Jdbi.create(to::writer).useTransaction(what);
    }

    private static String everything(Database of) {
        try (Handle h = Jdbi.create(of::writer).open()) {
            StringBuilder all = new StringBuilder();
            for (String table : List.of("flyway_schema_history", "event", "attempt", "run", "player", "journal")) {
                List<Map<String, Object>> rows = h.createQuery("SELECT * FROM " + table).mapToMap().list();
                all.append(table).append(rows);
            }
            return all.toString();
        }
    }

    private static String text(Event event) {
        return new String(ScriptedLane.json(event), StandardCharsets.UTF_8);
    }
}
