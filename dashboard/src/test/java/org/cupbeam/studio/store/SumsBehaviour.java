package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.league.Remembered;
import org.cupbeam.studio.league.Weeks;
import org.cupbeam.studio.store.league.Anew;
import org.cupbeam.studio.store.league.League;
import org.cupbeam.studio.store.logbook.PlayerRow;
import org.cupbeam.studio.store.logbook.Players;
import org.cupbeam.studio.store.sums.Sum;
import org.cupbeam.studio.store.upkeep.Rebuilt;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.Test;

/** Sums are what they are sums of, whatever happens in whatever order; whichever database they live in. */
abstract class SumsBehaviour extends StoreFixture {
    private static final int DEEDS = 160;
    private static final League LEAGUE = new League("Autumn", ScriptedLane.LADDER, Tags.NONE, ZoneId.of("Europe/Berlin"),
            LocalDate.of(2026, 11, 23), 8, 2, Set.of());

    @Test
    void staySoWhateverHappens() {
        for (int sequence = 0; sequence < Integer.getInteger("cupbeam.sequences", sequences()); sequence++) {
            long seed = Long.getLong("cupbeam.seed", System.nanoTime());
            Random random = new Random(seed);
            List<String> story = new ArrayList<>(List.of("seed " + seed));
            try (Store here = Store.open(database()); Store other = Store.open(database())) {
                Turmoil turmoil = new Turmoil(random, here, other);
                Remembered remembered = new Remembered();
                for (int i = 0; i < DEEDS; i++) {
                    story.add(turmoil.next());
                    if (i % 8 == 7 || i > DEEDS - 10) {
                        here.read(h -> {
                            holds(h, story);
                            asksTheSame(h, random, story);
                            Anew.read(h, LEAGUE, Weeks.of(LEAGUE).toMs(8), remembered, story);
                            return null;
                        });
                    }
                }
            } catch (RuntimeException e) {
                throw new IllegalStateException(String.valueOf(story), e);
            }
        }
    }

    /** How many, of those that differ. */
    int sequences() {
        return 6;
    }

    @Test
    void areMadeAnewAfterTheyWereSpoiled() {
        Random random = new Random(3);
        try (Store other = Store.open(database())) {
            Turmoil turmoil = new Turmoil(random, store, other);
            for (int i = 0; i < DEEDS; i++) {
                turmoil.next();
            }
        }
        assertThat(Rebuilt.all(database)).hasSameSizeAs(Sum.ALL).allMatch(each -> each.differed() == 0);
        store.writing(h -> {
            h.execute("UPDATE player_tally SET runs = runs + 1 WHERE player_id = 1 AND studio_id = (SELECT min(studio_id) FROM player_tally WHERE player_id = 1)");
            h.execute("DELETE FROM player_day");
            h.execute("INSERT INTO player_season (season, studio_id, player_id, station_mm, tries, made) VALUES (-5, 1, 1, 7, 1, 1)");
            h.execute("UPDATE lane_quarter SET emptied = emptied + 1, used_ms = 0");
        });
        int days = store.read(h -> h.createQuery("SELECT count(DISTINCT started_ms / 86400000 * 1000 + player_id) FROM run").mapTo(Integer.class).one());

        List<Rebuilt> made = Rebuilt.all(database);

        assertThat(made).extracting(Rebuilt::differed).startsWith((long) count("lane_quarter"), 1L).element(2).asInstanceOf(
                org.assertj.core.api.InstanceOfAssertFactories.LONG).isGreaterThanOrEqualTo(days);
        assertThat(made.get(3).differed()).isEqualTo(1);
        assertThat(Rebuilt.all(database)).allMatch(each -> each.differed() == 0);
    }

    @Test
    void aClockThatIsSetLateLeavesAlonePuttsWhoseEventsNeverCame() {
        ScriptedLane lane = new ScriptedLane("one", "j1").boots("boot-9", java.time.Instant.EPOCH);
        var started = lane.starts("r1", null, "Ada", 1);
        var lost = lane.passes(10).holes("r1", null, "Ada", 1);
        var holed = lane.passes(10).holes("r1", null, "Ada", 2);
        var clock = lane.passes(10).setsClock(NOW);
        try (Store other = Store.open(database())) {
            new Keeper(other).commit(batch(List.of(arrival(started, NOW), arrival(lost, NOW), arrival(holed, NOW))));
            Turmoil.takeIn(other, store);
        }
        keeper.commit(new Batch(List.of(arrival(started, NOW)), List.of(), List.of()));
        keeper.commit(new Batch(List.of(arrival(holed, NOW), arrival(clock, NOW)),
                List.of(new Batch.Missing(lane.source, 2, 2, NOW)), List.of()));

        assertThat(all("SELECT sequence, at_ms FROM attempt ORDER BY sequence")).extracting(row -> ((Number) row.get("at_ms")).longValue())
                .containsExactly(10_000L, NOW.toEpochMilli() - 10_000);
    }

    private static void holds(Handle h, List<String> story) {
        for (Sum each : Sum.ALL) {
            assertThat(each.differences(h)).as("%s after %s", each.what(), story).isZero();
        }
        Map<String, Long> used = new HashMap<>();
        h.createQuery("SELECT lane_id, quarter, used_ms FROM lane_quarter").map((row, ctx) -> used.put(row.getInt(1) + " " + row.getLong(2),
                row.getLong(3))).list();
        assertThat(used).as("play by quarters, putt by putt, after %s", story).isEqualTo(used(h));
    }

    /** From putt to putt, each pause given to the quarters that it lies in. */
    private static Map<String, Long> used(Handle h) {
        Map<String, Long> used = new HashMap<>();
        Map<Integer, Long> before = new HashMap<>();
        h.createQuery("SELECT lane_id, at_ms FROM attempt WHERE counts = 1 ORDER BY lane_id, at_ms").map((row, ctx) -> {
            int lane = row.getInt(1);
            long now = row.getLong(2);
            used.merge(lane + " " + Math.floorDiv(now, 900_000), 0L, Long::sum);
            long from = before.getOrDefault(lane, Long.MIN_VALUE / 2);
            for (long at = from; now - from <= 300_000 && at < now;) {
                long end = Math.min(now, (Math.floorDiv(at, 900_000) + 1) * 900_000);
                used.merge(lane + " " + Math.floorDiv(at, 900_000), end - at, Long::sum);
                at = end;
            }
            return before.put(lane, now);
        }).list();
        return used;
    }

    /** Pages' questions, as they were asked of the runs and attempts themselves. */
    private static void asksTheSame(Handle h, Random random, List<String> story) {
        long from = NOW.toEpochMilli() + (random.nextInt(45 * 96) - 2 * 96) * 900_000L;
        long to = from + random.nextInt(20 * 96) * 900_000L;
        assertThat(Visitors.between(h, Sight.ALL, from, to)).as("visitors from %d to %d after %s", from, to, story).isEqualTo(visitors(h, "1 = 1", from, to));
        Sight home = Sight.of(h, Scope.of(List.of("home")));
        assertThat(Visitors.between(h, home, from, to)).as("at home, from %d to %d after %s", from, to, story)
                .isEqualTo(visitors(h, "lane_id IN (SELECT l.id FROM lane l JOIN studio s ON s.id = l.studio_id WHERE s.name = 'home')", from, to));
        for (PlayerRow each : Players.byName(h, Sight.ALL, "", null, 50).rows()) {
            List<Long> begun = h.select("SELECT started_ms FROM run WHERE player_id = ? ORDER BY started_ms DESC", each.id())
                    .mapTo(Long.class).list();
            assertThat(each.runs()).as("runs of %s after %s", each, story).isEqualTo(begun.size());
            assertThat(each.lastMs()).as("last of %s after %s", each, story).isEqualTo(begun.isEmpty() ? null : begun.get(0));
        }
        assertThat(Players.latest(h, Sight.ALL, 4)).extracting(PlayerRow::id).as("who was here last after %s", story).isEqualTo(h.createQuery(
                "SELECT p.id FROM player p JOIN run r ON r.player_id = p.id WHERE p.name_key IS NOT NULL GROUP BY p.id "
                        + "ORDER BY max(r.started_ms) DESC, p.id DESC LIMIT 4").mapTo(Integer.class).list());
        assertThat(RecentPlayers.of(h, Sight.ALL, 4)).as("names after %s", story).isEqualTo(h.createQuery("SELECT name FROM (SELECT p.name, "
                + "coalesce((SELECT max(r.started_ms) FROM run r WHERE r.player_id = p.id), p.created_ms) AS seen_ms FROM player p "
                + "WHERE p.name IS NOT NULL) AS seen ORDER BY seen_ms DESC, name LIMIT 4").mapTo(String.class).list());
    }

    private static Visitors visitors(Handle h, String lane, long from, long to) {
        int emptied = h.select("SELECT count(*) FROM attempt a WHERE a.holed = 1 AND a.counts = 1 AND a.run_id IS NOT NULL AND a.at_ms >= ? "
                + "AND a.at_ms < ? AND NOT EXISTS (SELECT 1 FROM attempt b WHERE b.run_id = a.run_id AND b.visit = a.visit AND b.holed = 1 "
                + "AND b.counts = 1 AND b.sequence < a.sequence) AND " + lane, from, to).mapTo(Integer.class).one();
        int returning = h.select("SELECT count(*) FROM (SELECT DISTINCT player_id FROM run WHERE started_ms >= ? AND started_ms < ? AND " + lane
                + ") AS here WHERE EXISTS (SELECT 1 FROM run WHERE run.player_id = here.player_id AND run.started_ms < ? AND " + lane + ")",
                from, to, from).mapTo(Integer.class).one();
        return h.select("SELECT count(*), count(DISTINCT duel_id), count(DISTINCT player_id) FROM run WHERE started_ms >= ? AND started_ms < ? AND "
                + lane, from, to).map((row, ctx) -> new Visitors(row.getInt(1), row.getInt(2), row.getInt(3), returning, emptied)).one();
    }
}
