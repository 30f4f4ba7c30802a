package org.cupbeam.studio.usage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import org.cupbeam.studio.seed.Scenario;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.sheet.JsonBook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A made-up year's figures against the same ones added up putt by putt. */
class UsageReportTest {
    private static final Instant END = Instant.parse("2026-11-25T12:00:00Z");
    private static final Period MARCH = Period.month(YearMonth.of(2026, 3), Scenario.ZONE);

    @TempDir
    static Path folder;
    private static Store store;
    private static UsageReport report;

    @BeforeAll
    static void fill() {
        store = Store.open(Database.file(folder.resolve("year.db")));
        Seed.fill(store, END, 3, new Size(2, 3, 5, 10));
        report = store.read(h -> UsageReport.of(h, Sight.ALL, MARCH, StudioTime.of(h, Scenario.ZONE).hours(), END.toEpochMilli()));
    }

    @AfterAll
    static void close() {
        store.close();
    }

    @Test
    void addsUpToWhatThePuttsSay() {
        List<Map<String, Object>> putts = putts();
        long playMs = 0;
        for (int i = 1; i < putts.size(); i++) {
            long pause = (long) putts.get(i).get("at_ms") - (long) putts.get(i - 1).get("at_ms");
            boolean same = putts.get(i).get("lane_id").equals(putts.get(i - 1).get("lane_id"));
            playMs += same && pause <= 300_000 ? pause : 0;
        }
        Busy all = report.use().all();

        assertThat(all.putts()).isEqualTo(putts.size()).isGreaterThan(1_000);
        assertThat(all.playMs() + all.closedMs()).isEqualTo(playMs);
        assertThat(all.playMs()).isGreaterThan(9 * all.closedMs());
        assertThat(report.ballsFetched()).isEqualTo((int) putts.stream().filter(putt -> putt.get("holed").equals(1)).count());
        assertThat(report.visitors().emptied()).isBetween(report.ballsFetched() / 2, report.ballsFetched());
    }

    @Test
    void addsUpTheSameWhicheverWayItIsCut() {
        Use use = report.use();

        assertThat(use.lanes().stream().map(Use.OfLane::busy).reduce(Busy.NOTHING, Busy::plus)).isEqualTo(use.all());
        assertThat(use.days().stream().map(Use.OfDay::busy).reduce(Busy.NOTHING, Busy::plus)).isEqualTo(use.all());
        assertThat(use.heat().cells().stream().map(HeatMap.Cell::busy).reduce(Busy.NOTHING, Busy::plus))
                .isEqualTo(use.all());
    }

    @Test
    void knowsWhenTheStudioWasOpen() {
        // March 2026: 4 Tuesdays to Fridays of 11 h each, 4 Saturdays of 10 h, 5 Sundays of 8 h, and a Tuesday more.
        assertThat(report.use().all().openMs()).isEqualTo((17 * 11 + 4 * 10 + 5 * 8) * 2 * 3_600_000L);
        assertThat(report.use().heat().busiest(168)).noneMatch(cell -> cell.day() == DayOfWeek.MONDAY);
        assertThat(report.use().heat().busiest(1).get(0).busy().share()).isBetween(0.01, 1.0);
    }

    @Test
    void tellsWhoCameAndWhatBroke() {
        assertThat(report.visitors().players()).isBetween(3, 18);
        assertThat(report.visitors().returning()).isBetween(3, report.visitors().players());
        UsageReport year = store.read(h -> UsageReport.of(h, Sight.ALL, new Period(MARCH.from().minusMonths(4), MARCH.to().plusMonths(7),
                Scenario.ZONE), Scenario.HOURS, END.toEpochMilli()));
        assertThat(year.faults()).isNotEmpty().allMatch(fault -> fault.endedMs() != null);
        assertThat(year.faultMs()).isPositive();
    }

    @Test
    void writesItselfAsTables() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JsonBook.write(UsageSheets.of(report), out);

        String text = out.toString(StandardCharsets.UTF_8);
        assertThat(text).contains("\"from\":\"2026-03-01\",\"to\":\"2026-03-31\",\"time_zone\":\"Europe/Berlin\",\"lanes\":2,"
                + "\"open_h\":534,").contains("{\"weekday\":\"sun\",\"hour\":23,").contains("\"day\":\"2026-03-31\"");
    }

    private static List<Map<String, Object>> putts() {
        return store.read(h -> h.createQuery("SELECT lane_id, at_ms, holed FROM attempt WHERE counts = 1 "
                + "AND at_ms >= :from AND at_ms < :to ORDER BY lane_id, at_ms").bind("from", MARCH.fromMs())
                .bind("to", MARCH.toMs()).mapToMap().list());
    }
}
