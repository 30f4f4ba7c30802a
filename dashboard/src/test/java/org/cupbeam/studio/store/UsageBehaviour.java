package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.ResultSetMetaData;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.cupbeam.event.Event;
import org.cupbeam.event.Health;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ScriptedLane;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;

/** What the store counts for the owner, whichever database it lives in. */
abstract class UsageBehaviour extends StoreFixture {
    private static final Topics ONE = new Topics("home", "one");
    private static final String COUNTS =
            "SELECT lane_id, quarter, putts, holed, first_ms, last_ms, play_ms FROM lane_quarter ORDER BY lane_id, quarter";
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    @Test
    void countsPlayFromPuttToPuttAndNoPauseOverFiveMinutes() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1),
                lane.passes(60).misses("r1", null, "Ada", 2, 300), lane.passes(300).holes("r1", null, "Ada", 2),
                lane.passes(301).holes("r1", null, "Ada", 3), lane.passes(30).holes("r1", null, "Ada", 4));

        assertThat(one(COUNTS)).containsEntry("play_ms", 390_000).containsEntry("putts", 5).containsEntry("holed", 4);
    }

    @Test
    void givesPlayThatGoesOnOverTheEndOfAQuarterToBoth() {
        commit(lane.starts("r1", null, "Ada", 1), lane.passes(780).holes("r1", null, "Ada", 1));
        commit(lane.passes(150).misses("r1", null, "Ada", 2, 300));

        assertThat(all("SELECT used_ms FROM lane_quarter ORDER BY quarter")).extracting(row -> row.get("used_ms")).containsExactly(120_000, 30_000);
        commit(lane.takesBack(lane.sequence()));
        assertThat(one("SELECT used_ms FROM lane_quarter")).containsEntry("used_ms", 0);
    }

    @Test
    void countsTheSamePlayInWhateverBatchesItComes() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        commit(lane.passes(60).misses("r1", null, "Ada", 2, 300));
        commit(lane.passes(40).holes("r1", null, "Ada", 2));

        assertThat(one(COUNTS)).containsEntry("play_ms", 100_000);
    }

    @Test
    void countsAsIfCountedAnewThoughClocksLeapAndPuttsAreUndone() {
        long seed = Long.getLong("cupbeam.seed", System.nanoTime());
        Random random = new Random(seed);
        List<Event> events = new ArrayList<>(List.of(lane.starts("r1", null, "Ada", 1)));
        for (int i = 0; i < 300; i++) {
            long pause = random.nextInt(20) == 0 ? 700 - random.nextInt(2_000) : random.nextInt(100);
            events.add(lane.passes(pause).misses("r1", null, "Ada", 1, random.nextInt(900)));
            if (random.nextInt(10) == 0) {
                events.add(lane.voids(lane.sequence(), "coach", null));
            }
        }
        for (int from = 0; from < events.size();) {
            int to = Math.min(events.size(), from + 1 + random.nextInt(30));
            commit(events.subList(from, to).toArray(Event[]::new));
            from = to;
        }
        List<Map<String, Object>> kept = all(COUNTS);
        store.writing(h -> kept.forEach(row -> Quarters.count(h, new Stays.Place((int) row.get("lane_id"), (int) row.get("quarter")))));

        assertThat(all(COUNTS)).as("seed %d", seed).isEqualTo(kept).hasSizeGreaterThan(3);
    }

    @Test
    void countsThePlayOfAnOlderStoreWhenItOpens() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1),
                lane.passes(60).misses("r1", null, "Ada", 2, 300), lane.passes(400).holes("r1", null, "Ada", 2),
                lane.passes(1_000).holes("r1", null, "Ada", 3), lane.passes(15).holes("r1", null, "Ada", 4));
        List<Map<String, Object>> counted = all(COUNTS);
        Database old = database();
        Migrations.run(old, "4");
        try (Handle to = Jdbi.create(old::writer).open()) {
            List.of("studio", "lane", "journal", "player", "drill", "run", "attempt", "lane_quarter")
                    .forEach(table -> copy(table, to));
        }
        store.close();
        store = Store.open(old);

        assertThat(all(COUNTS)).isEqualTo(counted).hasSize(2);
    }

    /** As far as the older schema has columns for it. */
    private void copy(String table, Handle to) {
        List<String> columns = to.createQuery("SELECT * FROM " + table + " WHERE 1 = 0").execute((statement, ctx) -> {
            List<String> names = new ArrayList<>();
            ResultSetMetaData found = statement.get().executeQuery().getMetaData();
            for (int i = 1; i <= found.getColumnCount(); i++) {
                names.add(found.getColumnName(i));
            }
            return names;
        });
        for (Map<String, Object> row : store.read(h -> h.createQuery("SELECT * FROM " + table).mapToMap().list())) {
            to.execute("INSERT INTO " + table + " (" + String.join(", ", columns) + ") VALUES ("
                    + String.join(", ", Collections.nCopies(columns.size(), "?")) + ")",
                    columns.stream().map(row::get).toArray());
        }
    }

    @Test
    void countsRunsDuelsPlayersAndWhoCameBack() {
        commit(lane.starts("r0", null, "Ada", 1), lane.holes("r0", null, "Ada", 1));
        long from = lane.passes(86_400).wall().toEpochMilli();
        commit(lane.starts("r1", "d1", "Ada", 1), lane.starts("r2", "d1", "Bo", 2), lane.holes("r1", "d1", "Ada", 1),
                lane.holes("r1", "d1", "Ada", 1), lane.holes("r1", "d1", "Ada", 2), lane.misses("r2", "d1", "Bo", 1, 10),
                lane.puttsOutsideAnyRun(), lane.starts("r3", null, "Cy", 1));
        long to = lane.passes(1).wall().toEpochMilli();
        commit(lane.starts("r4", null, "Di", 1));

        assertThat(ask(from, to)).isEqualTo(new Visitors(3, 1, 3, 1, 2));
        assertThat(ask(from, to).newcomers()).isEqualTo(2);
        assertThat(ask(0, 1)).isEqualTo(new Visitors(0, 0, 0, 0, 0));
    }

    @Test
    void knowsWhichLanesWerePlayedOn() {
        ScriptedLane other = new ScriptedLane("two", "j2");
        commit(lane.puttsOutsideAnyRun());
        commit(other.passes(86_400).puttsOutsideAnyRun());
        long day = 86_400_000;
        long first = Instant.parse("2026-11-25T00:00:00Z").toEpochMilli();

        assertThat(store.<List<LaneName>>read(h -> LaneName.all(h, Sight.ALL))).containsExactly(new LaneName(1, "home", "one"),
                new LaneName(2, "home", "two"));
        assertThat(store.<List<Integer>>read(h -> LaneName.played(h, first, first + day))).containsExactly(1);
        assertThat(store.<List<Integer>>read(h -> LaneName.played(h, first, first + 2 * day))).containsExactly(1, 2);
    }

    @Test
    void keepsWhatIsSet() {
        store.writing(h -> Settings.set(h, "opening-hours", "mon 09:00-10:00", 1));
        store.writing(h -> Settings.set(h, "opening-hours", "mon 09:00-11:00", 2));

        assertThat(openingHours()).contains("mon 09:00-11:00");
        store.writing(h -> Settings.clear(h, "opening-hours"));
        assertThat(openingHours()).isEmpty();
    }

    @Test
    void writesDownWhenAFaultBeganAndWhenItWasOver() {
        commit(lane.puttsOutsideAnyRun());
        FaultBook book = new FaultBook(store);
        book.heard(ONE, online(1), 1_000);
        book.heard(ONE, online(1, "past-1 is blocked since 12 s", "cup turns on and off"), 2_000);
        book.heard(ONE, online(1, "past-1 is blocked since 22 s", "cup turns on and off"), 12_000);
        book.heard(ONE, online(1, "past-1 is blocked since 32 s"), 22_000);

        assertThat(faults()).containsExactlyInAnyOrder(new Fault(1, "past-1 is blocked since 12 s", 2_000, null),
                new Fault(1, "cup turns on and off", 2_000, 22_000L));
        assertThat(faults().get(0).lastedMs(10_000, 30_000) + faults().get(1).lastedMs(10_000, 30_000))
                .isEqualTo(20_000 + 12_000);
    }

    @Test
    void endsFaultsWithTheLaneThatSaidThemAndGoesOnAfterARestart() {
        commit(lane.puttsOutsideAnyRun());
        new FaultBook(store).heard(ONE, online(4, "cup turns on and off"), 1_000);
        FaultBook restarted = new FaultBook(store);
        restarted.heard(ONE, online(4, "cup turns on and off"), 5_000);
        restarted.heard(ONE, new Health(Health.State.LOST, 3, "b", null), 6_000);
        assertThat(faults()).containsExactly(new Fault(1, "cup turns on and off", 1_000, null));

        restarted.heard(ONE, new Health(Health.State.LOST, 4, "b", null), 7_000);
        restarted.heard(ONE, online(5), 9_000);
        assertThat(faults()).containsExactly(new Fault(1, FaultBook.LOST, 7_000, 9_000L),
                new Fault(1, "cup turns on and off", 1_000, 7_000L));
    }

    private Optional<String> openingHours() {
        return store.read(h -> Settings.get(h, "opening-hours"));
    }

    private List<Fault> faults() {
        return store.read(h -> Fault.between(h, Sight.ALL, 0, Long.MAX_VALUE));
    }

    private Visitors ask(long from, long to) {
        return store.read(h -> Visitors.between(h, Sight.ALL, from, to));
    }

    private static Health online(long connection, String... faults) {
        return new Health(Health.State.ONLINE, connection, "b", new Health.Report("j1", "1", NOW, Stamp.Clock.SYNCHRONISED,
                0, 0, List.of(), List.of(faults)));
    }
}
