package org.cupbeam.studio.usage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.seed.Scenario;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.store.BestRun;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.PlayerTallies;
import org.cupbeam.studio.store.RecentPlayers;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.logbook.Attempts;
import org.cupbeam.studio.store.logbook.Cursor;
import org.cupbeam.studio.store.logbook.Drills;
import org.cupbeam.studio.store.logbook.LogFilter;
import org.cupbeam.studio.store.logbook.Notes;
import org.cupbeam.studio.store.logbook.Players;
import org.cupbeam.studio.store.logbook.Runs;
import org.cupbeam.studio.store.logbook.Trail;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlLogger;
import org.jdbi.v3.core.statement.SqlStatements;
import org.jdbi.v3.core.statement.StatementContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is asked for somebody who looks after some studios goes by an index: no run, putt or quarter of others is read for it. */
class ScopedPlansTest {
    private static final Instant END = Instant.parse("2026-11-25T21:00:00Z");
    /** As SQLite says that it reads all rows of a large table one after the other. */
    private static final Pattern READS_ALL =
            Pattern.compile("SCAN (r|run|seen|a|attempt|c|correction|q|lane_quarter|f|fault|e|event)\\b.*");

    @TempDir
    Path folder;

    @Test
    void goByAnIndex() {
        Database database = Database.file(folder.resolve("studio.db"));
        try (Store store = Store.open(database)) {
            Seed.fill(store, END, 20, new Size(2, 3, 4, 3));
            ScriptedLane other = new ScriptedLane("quay", "one", "jq");
            var started = other.starts("r1", null, "Robin", 1);
            new Keeper(store).commit(new Batch(List.of(new Arrival(started.source(), 1, started.time(), started, null,
                    ScriptedLane.json(started), END)), List.of(), List.of()));
        }
        Map<String, String> wrong = new LinkedHashMap<>();
        try (Store store = Store.open(database)) { // what queries are planned by is gathered at the start
            questions().forEach((what, ask) -> plans(store, ask).stream().filter(line -> READS_ALL.matcher(line).matches())
                    .forEach(line -> wrong.put(what, line)));
            assertThat(plans(store, (h, sight) -> h.createQuery("SELECT count(*) FROM run r WHERE r.attempts = 7").mapTo(Integer.class).one()))
                    .as("one that does would be seen").anyMatch(line -> READS_ALL.matcher(line).matches());
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void aPageOfWhatWasPutRightIsReadInItsOrderAndNotSorted() {
        Database database = Database.file(folder.resolve("studio.db"));
        try (Store store = Store.open(database)) {
            Seed.fill(store, END, 20, new Size(2, 3, 4, 3));
            List<String> sight = plans(store, (h, scoped) -> { });
            for (Cursor after : new Cursor[] {null, Cursor.parse(END.toEpochMilli() + "_1_5")}) {
                List<String> all = plans(store, (h, scoped) -> Trail.page(h, Sight.ALL, after, 50));
                assertThat(all.subList(sight.size(), all.size())).anyMatch(line -> line.contains("correction_at"))
                        .noneMatch(line -> line.contains("TEMP B-TREE"));
            }
        }
    }

    private static Map<String, BiConsumer<Handle, Sight>> questions() {
        LogFilter all = LogFilter.ALL.within(Scope.of(List.of(Scenario.STUDIO)));
        Map<String, BiConsumer<Handle, Sight>> asks = new LinkedHashMap<>();
        asks.put("players by name", (h, sight) -> Players.byName(h, sight, "", null, 50));
        asks.put("players found", (h, sight) -> Players.byName(h, sight, "a", null, 50));
        asks.put("players counted", (h, sight) -> Players.count(h, sight, ""));
        asks.put("who was here last", (h, sight) -> Players.latest(h, sight, 50));
        asks.put("a player", (h, sight) -> Players.one(h, sight, 3));
        asks.put("a name", (h, sight) -> Players.named(h, sight, "x"));
        asks.put("names", (h, sight) -> RecentPlayers.of(h, sight, 200));
        asks.put("runs", (h, sight) -> Runs.page(h, all, null, 50));
        asks.put("runs of a player", (h, sight) -> Runs.page(h, all.player(3), null, 50));
        asks.put("runs of a drill", (h, sight) -> Runs.page(h, all.drill("Ladder"), null, 50));
        asks.put("runs by tags", (h, sight) -> Runs.page(h, all.tags(Tags.Break.STRAIGHT, null), null, 50));
        asks.put("putts", (h, sight) -> Attempts.page(h, all, null, 50));
        asks.put("putts of a player", (h, sight) -> Attempts.page(h, all.player(3), null, 50));
        asks.put("what was put right", (h, sight) -> Trail.page(h, sight, null, 50));
        asks.put("what was put right of a player", (h, sight) -> Trail.ofPlayer(h, sight, 3));
        asks.put("notes on a player", (h, sight) -> Notes.ofPlayer(h, sight, 3, null, 50));
        asks.put("drills", Drills::names);
        asks.put("drills of a player", (h, sight) -> Drills.ofPlayer(h, sight, 3, 12));
        asks.put("when a player began", (h, sight) -> Runs.begunMs(h, sight, 3, 50));
        asks.put("what a player held", (h, sight) -> PlayerTallies.between(h, sight, 3, 0, Long.MAX_VALUE));
        asks.put("the best run", (h, sight) -> BestRun.of(h, Scenario.STUDIO, ScriptedLane.LADDER, Tags.NONE));
        asks.put("a month", (h, sight) -> UsageReport.of(h, sight, Period.month(YearMonth.of(2026, 11), Scenario.ZONE),
                OpeningHours.USUAL, END.toEpochMilli()));
        asks.put("whether a player is seen whole", (h, sight) -> sight.seesWhole(h, 3));
        asks.put("whether a note is seen", (h, sight) -> sight.seesNote(h, 1));
        return asks;
    }

    /** What SQLite says of how it answers what is asked. */
    private static List<String> plans(Store store, BiConsumer<Handle, Sight> ask) {
        return store.read(h -> {
            List<String> asked = new ArrayList<>();
            h.getConfig(SqlStatements.class).setSqlLogger(new SqlLogger() {
                @Override
                public void logAfterExecution(StatementContext context) {
                    asked.add(context.getRenderedSql());
                }
            });
            ask.accept(h, Sight.of(h, Scope.of(List.of(Scenario.STUDIO))));
            h.getConfig(SqlStatements.class).setSqlLogger(SqlLogger.NOP_SQL_LOGGER);
            assertThat(asked).isNotEmpty();
            List<String> plans = new ArrayList<>();
            for (String sql : asked) {
                plans.addAll(h.createQuery("EXPLAIN QUERY PLAN " + sql.replace("?", "NULL")).map((row, ctx) -> row.getString("detail")).list());
            }
            return plans;
        });
    }
}
