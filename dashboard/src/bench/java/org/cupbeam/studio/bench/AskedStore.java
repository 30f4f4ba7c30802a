package org.cupbeam.studio.bench;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.league.Weeks;
import org.cupbeam.studio.seed.Scenario;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.Shelf;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.league.League;
import org.cupbeam.studio.store.league.LeagueBook;
import org.cupbeam.studio.store.logbook.Drills;
import org.cupbeam.studio.web.PageQuestions.Found;
import org.cupbeam.studio.web.PageQuestions.Run;
import org.jdbi.v3.core.Handle;

/** A store with a made-up year in it, and what there is in it to ask for. */
record AskedStore(Found found, List<String> journals, long attempts, long events) {
    private static final long SEED = 20;
    private static final int PLAYERS = 40;
    private static final int RUNS = 2_000;
    private static final int KEPT_DRILLS = 40;

    /** Fills it unless it holds something already. */
    static AskedStore open(Database database, int attempts) {
        try (Store store = Store.open(database)) {
            if (count(store, "SELECT count(*) FROM attempt") == 0) {
                long began = System.nanoTime();
                Seed.fill(store, Instant.now(), SEED, Size.ofAttempts(attempts));
                System.out.printf("filled in %.0f s%n", (System.nanoTime() - began) / 1e9);
            }
            if (store.read(Shelf::all).isEmpty()) {
                Drill ladder = DrillFile.preset("ladder");
                for (int i = 1; i <= KEPT_DRILLS; i++) {
                    Drill made = new Drill("Ladder " + i, ladder.stations(), ladder.balls(), ladder.supply(), ladder.holed(),
                            ladder.limitMm(), ladder.penalty(), ladder.turns());
                    store.writing(h -> Shelf.add(h, made, "bench", 0));
                }
            }
            if (store.read(LeagueBook::all).stream().noneMatch(each -> each.league().weeks() == League.MOST_WEEKS)) {
                store.writing(h -> LeagueBook.open(h, new League("Half a year", DrillFile.preset("ladder"), Tags.NONE, Scenario.ZONE,
                        Weeks.monday(LocalDate.now(Scenario.ZONE)).minusWeeks(League.MOST_WEEKS - 1L), League.MOST_WEEKS, 3, Set.of()), "bench", 0));
            }
            return store.read(h -> look(h, store));
        }
    }

    private static AskedStore look(Handle h, Store store) {
        List<Integer> byPutts = h.createQuery("SELECT player_id FROM player_season GROUP BY player_id ORDER BY sum(tries) DESC, player_id")
                .mapTo(Integer.class).list();
        List<LaneName> lanes = LaneName.all(h, Sight.ALL).stream().filter(lane -> lane.studio().equals(Scenario.STUDIO)).toList();
        long now = h.createQuery("SELECT max(at_ms) FROM attempt").mapTo(Long.class).one();
        List<Run> runs = h.createQuery("SELECT id, started_ms FROM run").map((row, ctx) -> new Run(row.getInt(1), row.getLong(2)))
                .list();
        Random random = new Random(SEED);
        Found found = new Found(random, Scenario.STUDIO, lanes.stream().map(LaneName::lane).toList(),
                lanes.stream().map(LaneName::id).toList(), byPutts.subList(0, PLAYERS),
                byPutts.subList(byPutts.size() - PLAYERS, byPutts.size()),
                h.createQuery("SELECT name FROM player WHERE name IS NOT NULL ORDER BY id").mapTo(String.class).list(),
                IntStream.range(0, RUNS).mapToObj(i -> runs.get(random.nextInt(runs.size()))).toList(),
                h.createQuery("SELECT id FROM run WHERE attempts IS NOT NULL ORDER BY attempts DESC, id LIMIT 100").mapTo(Integer.class).list(),
                h.createQuery("SELECT at_ms, journal_id, sequence FROM correction ORDER BY sequence LIMIT 500").map((row, ctx) ->
                        row.getLong(1) + "_" + row.getInt(2) + "_" + row.getLong(3)).list(),
                Drills.names(h, Sight.ALL), Shelf.all(h).stream().map(Shelf.Kept::id).toList(),
                LeagueBook.all(h).stream().sorted(Comparator.comparing(each -> -each.league().weeks())).map(LeagueBook.Kept::id).toList(),
                LocalDate.ofInstant(Instant.ofEpochMilli(now), Scenario.ZONE));
        List<String> journals = h.createQuery("SELECT name FROM journal WHERE id IN (SELECT min(id) FROM journal GROUP BY lane_id) "
                + "ORDER BY lane_id").mapTo(String.class).list();
        return new AskedStore(found, journals, count(store, "SELECT count(*) FROM attempt"), count(store, "SELECT count(*) FROM event"));
    }

    private static long count(Store store, String sql) {
        return store.read(h -> h.createQuery(sql).mapTo(Long.class).one());
    }
}
