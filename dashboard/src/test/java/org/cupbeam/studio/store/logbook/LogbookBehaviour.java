package org.cupbeam.studio.store.logbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** What the record answers, against the whole of it gone through row by row; whichever database it lives in. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class LogbookBehaviour {
    private static final Instant END = Instant.parse("2026-11-25T12:00:00Z");
    private static final Instant JULY = Instant.parse("2026-07-01T00:00:00Z");
    private Store store;
    private List<RunRow> runs;
    private List<AttemptRow> attempts;

    protected abstract Database database();

    @BeforeAll
    void fill() {
        store = Store.open(database());
        Seed.fill(store, END, 9, new Size(2, 2, 3, 3));
        runs = everything(Runs::page, LogFilter.ALL);
        attempts = everything(Attempts::page, LogFilter.ALL);
    }

    @AfterAll
    void close() {
        store.close();
    }

    @Test
    void listsEveryRunOnceTheNewestFirst() {
        assertThat(runs).hasSize(count("run")).doesNotHaveDuplicates().isSortedAccordingTo(
                Comparator.comparingLong(RunRow::startedMs).thenComparingInt(RunRow::id).reversed());
    }

    @Test
    void listsEveryAttemptOnceTheNewestFirst() {
        assertThat(attempts).hasSize(count("attempt")).doesNotHaveDuplicates().isSortedAccordingTo(
                Comparator.comparingLong(AttemptRow::atMs).reversed());
        assertThat(attempts).filteredOn(attempt -> attempt.of() == null).isNotEmpty();
    }

    @Test
    void listsTheRunsThatAFilterAsksForAndNoOthers() {
        for (LogFilter filter : filters()) {
            assertThat(everything(Runs::page, filter)).as("%s", filter).isNotEmpty()
                    .isEqualTo(runs.stream().filter(run -> wanted(run, filter)).toList());
        }
    }

    @Test
    void listsTheAttemptsOfTheRunsThatAFilterAsksFor() {
        Map<Integer, RunRow> byId = runs.stream().collect(Collectors.toMap(RunRow::id, Function.identity()));
        for (LogFilter filter : filters()) {
            List<AttemptRow> wanted = attempts.stream().filter(attempt -> attempt.of() != null
                    && wanted(byId.get(attempt.of().run()), filter)).toList();
            List<AttemptRow> listed = everything(Attempts::page, filter);

            assertThat(listed).as("%s", filter).isNotEmpty().doesNotHaveDuplicates();
            if (filter.anyRun()) {
                assertThat(listed).containsAll(wanted.stream().filter(attempt -> during(filter, attempt.atMs())).toList());
            } else {
                assertThat(listed).as("%s", filter).containsExactlyInAnyOrderElementsOf(wanted);
                assertThat(listed).extracting(attempt -> byId.get(attempt.of().run()).startedMs())
                        .isSortedAccordingTo(Comparator.reverseOrder());
            }
        }
    }

    @Test
    void answersWithNothingWhereThereIsNothing() {
        for (LogFilter none : List.of(LogFilter.ALL.drill("no such drill"), LogFilter.ALL.player(4_711),
                LogFilter.ALL.between(1L, 2L))) {
            assertThat(everything(Runs::page, none)).isEmpty();
            assertThat(everything(Attempts::page, none)).isEmpty();
        }
    }

    @Test
    void tellsARunPuttByPutt() {
        RunRow duelled = runs.stream().filter(run -> run.duel() != null && run.result() != null).findFirst().orElseThrow();

        RunStory story = store.read(h -> RunStory.of(h, duelled.id())).orElseThrow();

        assertThat(story.run()).isEqualTo(duelled);
        assertThat(story.putts()).isSortedAccordingTo(Comparator.comparingLong(AttemptRow::sequence))
                .allMatch(putt -> putt.of().run() == duelled.id());
        assertThat(story.putts()).filteredOn(AttemptRow::counts).hasSize(duelled.result().attempts());
        assertThat(story.duel()).hasSizeGreaterThan(1).contains(duelled).extracting(RunRow::duel).containsOnly(duelled.duel());
        assertThat(store.read(h -> RunStory.of(h, 0)).isPresent()).isFalse();
    }

    @Test
    void tellsWhatWasTakenBackAndByWhom() {
        AttemptRow taken = attempts.stream().filter(attempt -> !attempt.counts()).findFirst().orElseThrow();

        List<Change> changes = store.read(h -> RunStory.of(h, taken.of().run())).orElseThrow().changes();

        assertThat(changes).anyMatch(change -> Integer.valueOf(taken.id()).equals(change.attempt()) && !change.by().isEmpty()
                && List.of("taken-back", "voided").contains(change.what()));
        assertThat(everything((h, filter, after, limit) -> Trail.page(h, Sight.ALL, after, limit), LogFilter.ALL)).doesNotHaveDuplicates()
                .hasSize(count("correction") + count("amendment")).isSortedAccordingTo(Comparator.comparingLong(Change::atMs).reversed());
        assertThat(store.<List<Change>>read(h -> Trail.ofPlayer(h, Sight.ALL, taken.of().playerId()))).containsAll(changes);
    }

    @Test
    void findsPlayersByAnyPartOfTheirName() {
        List<PlayerRow> all = everything((h, filter, after, limit) -> Players.byName(h, Sight.ALL, "", after, limit), LogFilter.ALL);
        PlayerRow first = all.get(0);

        assertThat(all).hasSize(8).extracting(PlayerRow::id).doesNotHaveDuplicates();
        assertThat(all).extracting(PlayerRow::runs).allMatch(count -> count > 0);
        assertThat(all.stream().mapToInt(PlayerRow::runs).sum()).isEqualTo(runs.size());
        assertThat(store.read(h -> Players.byName(h, Sight.ALL, first.name().substring(2).toUpperCase(), null, 10)).rows())
                .contains(first);
        assertThat(store.read(h -> Players.byName(h, Sight.ALL, "%", null, 10)).rows()).isEmpty();
        assertThat(store.read(h -> Players.named(h, Sight.ALL, " " + first.name().toUpperCase() + " ")).orElseThrow()).isEqualTo(first);
        assertThat(store.<List<PlayerRow>>read(h -> Players.latest(h, Sight.ALL, 3))).hasSize(3).first().extracting(PlayerRow::id)
                .isEqualTo(runs.stream().filter(run -> run.startedMs() == runs.get(0).startedMs())
                        .mapToInt(RunRow::playerId).max().getAsInt());
    }

    @Test
    void refusesAPlaceOfAnotherList() {
        assertThat(Cursor.parse("-5_7").toString()).isEqualTo("-5_7");
        for (String text : List.of("", "x", "1_", "1_2_3_4_5", "99999999999999999999")) {
            assertThatThrownBy(() -> Cursor.parse(text)).isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("begin with the first page");
        }
        assertThatThrownBy(() -> store.read(h -> Runs.page(h, LogFilter.ALL, Cursor.of(1), 5)))
                .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("another list");
    }

    private List<LogFilter> filters() {
        LogFilter all = LogFilter.ALL;
        int player = runs.get(0).playerId();
        long july = JULY.toEpochMilli();
        return List.of(all.player(player), all.drill("Putter-length ladder"), all.tags(Tags.Break.RIGHT_TO_LEFT, null),
                all.tags(null, Tags.Slope.DOWNHILL), all.lane(2), all.between(july, null), all.between(null, july),
                all.player(player).drill("One ball only").tags(Tags.Break.STRAIGHT, Tags.Slope.LEVEL).lane(1)
                        .between(july - 120L * 86_400_000, END.toEpochMilli()));
    }

    private static boolean wanted(RunRow run, LogFilter filter) {
        return (filter.player() == null || filter.player() == run.playerId())
                && (filter.drill() == null || filter.drill().equals(run.drill()))
                && (filter.breaks() == null || filter.breaks() == run.tags().breaks())
                && (filter.slope() == null || filter.slope() == run.tags().slope())
                && (filter.lane() == null || Objects.equals(filter.lane(), run.lane()))
                && during(filter, run.startedMs());
    }

    private static boolean during(LogFilter filter, long ms) {
        return (filter.fromMs() == null || ms >= filter.fromMs()) && (filter.toMs() == null || ms < filter.toMs());
    }

    /** A way to list something. */
    private interface Listing<T> {
        Page<T> page(Handle h, LogFilter filter, Cursor after, int limit);
    }

    private <T> List<T> everything(Listing<T> list, LogFilter filter) {
        List<T> rows = new ArrayList<>();
        Cursor after = null;
        do {
            Cursor from = after;
            Page<T> page = store.read(h -> list.page(h, filter, from, 397));
            rows.addAll(page.rows());
            after = page.next() == null ? null : Cursor.parse(page.next().toString());
        } while (after != null);
        return rows;
    }

    private int count(String table) {
        return store.read(h -> h.createQuery("SELECT count(*) FROM " + table).mapTo(Integer.class).one());
    }
}
