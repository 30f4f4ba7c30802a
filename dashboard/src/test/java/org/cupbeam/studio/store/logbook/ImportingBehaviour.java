package org.cupbeam.studio.store.logbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.NoteBook;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.StoreFixture;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.logbook.Importer.Form;
import org.cupbeam.studio.store.sheet.BadRow;
import org.cupbeam.studio.store.sheet.CsvSheet;
import org.cupbeam.studio.store.sheet.JsonBook;
import org.cupbeam.studio.store.sheet.Sheet;
import org.junit.jupiter.api.Test;

/** What an export says, and what becomes of it in another studio; whichever database both live in. */
abstract class ImportingBehaviour extends StoreFixture {
    private static final Who INES = new Who("Ines", null, 1_800_000_000_000L);
    private static final String COUNTS = "SELECT lane_id, quarter, putts, holed, first_ms, last_ms, play_ms "
            + "FROM lane_quarter ORDER BY lane_id, quarter";
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    @Test
    void bringsAWholeRecordOverAsItWas() throws IOException, BadRow {
        Seed.fill(store, Instant.parse("2026-11-25T12:00:00Z"), 2, new Size(2, 0, 1, 3));
        int run = store.read(h -> Runs.page(h, LogFilter.ALL, null, 1)).rows().get(0).id();
        new NoteBook(store).onRun(run, "better\nthan ever", INES);
        new NoteBook(store).onAttempt(5, "=lucky", INES);
        new PlayerBook(store).describe(1, "left", "feet", "+49");
        new RecordBook(store).voids(7, INES);
        new PlayerBook(store).forget(3, INES);
        String book = json(LogSheets.book(store, LogFilter.ALL));

        try (Store other = Store.open(database())) {
            Importer.Report report = take(other, Form.JSON, book);
            assertThat(report.problems()).isEmpty();
            assertThat(report.added()).containsEntry("attempts", count("attempt")).containsEntry("runs", count("run"))
                    .containsEntry("players", count("player WHERE name_key IS NOT NULL")).containsEntry("notes", 2);
            assertSame(json(LogSheets.book(other, LogFilter.ALL)), book);
            assertThat(rows(other, COUNTS)).isEqualTo(rows(store, COUNTS));

            Importer.Report again = take(other, Form.JSON, book);
            assertThat(again.added()).isEmpty();
            assertThat(again.known()).containsEntry("attempts", count("attempt"));
            assertThat(rows(other, "SELECT count(*) AS n FROM player")).isEqualTo(rows(store, "SELECT count(*) AS n FROM player"));
        }
    }

    @Test
    void bringsEachTableOverAsValuesBetweenCommas() throws IOException, BadRow {
        commit(lane.starts("r1", "d1", "Ada", 1), lane.starts("r2", "d1", "=Bo", 2), lane.holes("r1", "d1", "Ada", 1),
                lane.misses("r2", "d1", "=Bo", 1, -120.5), lane.ends("r1", "d1", "Ada", 1, 1, 1, Double.NaN),
                lane.ends("r2", "d1", "=Bo", 0, 1, 0, 120.5), lane.endsDuel("d1", "Ada"), lane.puttsOutsideAnyRun(),
                lane.voids(4, "Ines", "kicked"));
        try (Store other = Store.open(database())) {
            for (Sheet each : LogSheets.book(store, LogFilter.ALL)) {
                assertThat(take(other, Form.CSV, csv(each)).problems()).isEmpty();
            }
            assertSame(json(LogSheets.book(other, LogFilter.ALL)), json(LogSheets.book(store, LogFilter.ALL)));
        }
    }

    @Test
    void makesUpTheRunOfAttemptsThatComeAlone() throws IOException, BadRow {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        try (Store other = Store.open(database())) {
            take(other, Form.CSV, csv(LogSheets.attempts(store, LogFilter.ALL)));

            RunRow run = other.read(h -> Runs.one(h, 1)).orElseThrow();
            assertThat(run.player()).isEqualTo("Ada");
            assertThat(run.drill()).isNull();
        }
    }

    @Test
    void countsNothingTwiceWhenALaneSaysLaterWhatAnImportSaidBefore() throws IOException, BadRow {
        Seed.fill(new Keeper(store), Instant.parse("2026-11-25T12:00:00Z"), 4, new Size(1, 0, 1, 1));
        String counts = rows(store, COUNTS).toString();
        String book = json(LogSheets.book(store, LogFilter.ALL));
        try (Store other = Store.open(database())) {
            take(other, Form.JSON, book);
            Seed.fill(new Keeper(other), Instant.parse("2026-11-25T12:00:00Z"), 4, new Size(1, 0, 1, 1));

            assertSame(json(LogSheets.book(other, LogFilter.ALL)), book);
            assertThat(rows(other, COUNTS).toString()).isEqualTo(counts);
            assertThat(rows(other, "SELECT count(*) AS n FROM event")).isEqualTo(rows(store, "SELECT count(*) AS n FROM event"));
            assertThat(rows(other, "SELECT count(*) AS n FROM event WHERE problem IS NOT NULL").toString()).contains("=0");
        }
    }

    @Test
    void aRunWhosePuttsAreStillComingIsNotWorkedOutBeforeItsEnd() throws IOException, BadRow {
        Event[] played = {lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 100), lane.voids(2, "Ines", null),
            lane.misses("r1", null, "Ada", 1, 300), lane.holes("r1", null, "Ada", 1), lane.ends("r1", null, "Ada", 1, 3, 1, 200)};
        commit(played);
        String score = "SELECT stations_cleared, attempts, holed, mean_miss_mm FROM run";
        String trail = "SELECT what, was, became, at_ms FROM amendment WHERE what <> 'imported'";
        assertThat(one(score)).containsEntry("attempts", 2);
        try (Store other = Store.open(database())) {
            take(other, Form.CSV, csv(LogSheets.runs(store, LogFilter.ALL)));
            for (Event each : played) {
                new Keeper(other).commit(batch(List.of(arrival(each, NOW))));
                assertThat(rows(other, score)).as("after event " + each.sequence()).isEqualTo(rows(store, score));
            }
            assertThat(rows(other, trail)).as("the lane's end said nothing new").isEmpty();
            take(other, Form.CSV, csv(LogSheets.changes(store, Scope.ALL)));
            assertThat(rows(other, trail)).isEqualTo(rows(store, trail));

            Event later = lane.voids(4, "Ines", "kicked");
            commit(later);
            new Keeper(other).commit(batch(List.of(arrival(later, NOW))));
            assertThat(rows(other, score)).isEqualTo(rows(store, score));
            assertThat(one(score)).containsEntry("attempts", 1);
        }
    }

    @Test
    void aRunThatCameWithoutAllItsPuttsKeepsItsScore() throws IOException, BadRow {
        commit(lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 100), lane.misses("r1", null, "Ada", 1, 300),
                lane.holes("r1", null, "Ada", 1), lane.ends("r1", null, "Ada", 1, 3, 1, 200));
        try (Store other = Store.open(database())) {
            take(other, Form.CSV, csv(LogSheets.runs(store, LogFilter.ALL)));
            take(other, Form.CSV, csv(LogSheets.attempts(store, LogFilter.ALL)).replaceFirst("(?m)^.*,4,.*,holed,.*\\R", ""));
            new RecordBook(other).voids(1, INES);
            assertThat(rows(other, "SELECT stations_cleared, attempts FROM run").toString()).contains("=1", "=3");
            assertThat(rows(other, "SELECT became FROM amendment WHERE what = 'not-rescored'").toString())
                    .contains("its 3 putts did not all come");
        }
    }

    @Test
    void leavesOutRowsThatMakeNoSenseAndSaysWhichAndWhy() throws IOException, BadRow {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 2),
                lane.misses("r1", null, "Ada", 3, 9));
        String csv = csv(LogSheets.attempts(store, LogFilter.ALL)).replaceFirst(",holed,", ",sunk,")
                .replaceFirst("home", "No Such Name");
        try (Store other = Store.open(database())) {
            Importer.Report report = take(other, Form.CSV, csv);

            assertThat(report.added()).containsEntry("attempts", 1);
            assertThat(report.leftOut()).isEqualTo(2);
            assertThat(report.problems()).anyMatch(text -> text.startsWith("file row 2, outcome: is \"sunk\"; give"))
                    .anyMatch(text -> text.startsWith("file row 1, journal: with studio and lane names no journal"));
            assertThat(other.read(h -> Trail.page(h, Sight.ALL, null, 5)).rows()).extracting(Change::what, Change::by)
                    .containsExactly(tuple("imported", "Ines"));
        }
    }

    @Test
    void refusesAFileThatIsNoExport() {
        assertThatThrownBy(() -> take(store, Form.CSV, "a,b\n1,2\n")).isInstanceOf(BadRow.class)
                .hasMessageContaining("file row 1: no table that is known here has such columns");
        assertThatThrownBy(() -> take(store, Form.JSON, "[]")).isInstanceOf(BadRow.class);
        assertThat(count("amendment")).isZero();
    }

    private static Importer.Report take(Store into, Form form, String text) throws IOException, BadRow {
        return Importer.take(into, "file", form, new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), INES);
    }

    private static String json(List<Sheet> sheets) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JsonBook.write(sheets, out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static String csv(Sheet sheet) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        CsvSheet.write(sheet, out);
        return out.toString(StandardCharsets.UTF_8);
    }

    /** But for the numbers of rows, which are a store's own, and the order of what began in the same instant. */
    private static void assertSame(String book, String expected) {
        List<String> rows = rows(book);
        List<String> wanted = rows(expected);
        assertThat(rows.stream().filter(row -> !wanted.contains(row)).limit(3)).as("too much").isEmpty();
        assertThat(wanted.stream().filter(row -> !rows.contains(row)).limit(3)).as("missing").isEmpty();
        assertThat(rows).hasSameSizeAs(wanted);
    }

    private static List<String> rows(String book) {
        return book.replaceAll("\"player_number\":\\d+", "").lines().map(line -> line.replaceAll("^,|\\],.*$|\\]\\}$", ""))
                .filter(line -> !line.isEmpty() && !line.matches(".*\"what\":\"(imported|forgotten)\".*")).sorted().toList();
    }

    private static List<Map<String, Object>> rows(Store of, String sql) {
        return of.read(h -> h.createQuery(sql).mapToMap().list());
    }
}
