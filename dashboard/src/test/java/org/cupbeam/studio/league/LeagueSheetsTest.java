package org.cupbeam.studio.league;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.cupbeam.studio.store.league.Played;
import org.cupbeam.studio.store.sheet.Sheet;
import org.junit.jupiter.api.Test;

/** A league as tables for other programs. */
class LeagueSheetsTest {
    private static final Weeks WEEKS = new Weeks(LocalDate.of(2026, 12, 21), 3, ZoneOffset.UTC);

    @Test
    void theTableOverAllWeeksThenEachWeeksThenTheRuns() {
        List<Sheet> sheets = sheets(List.of(run(1, 7, "Bo", 4, 200), run(2, 7, "Bo", 3, Double.NaN), run(2, 8, "Ada", 5, 90)));

        assertThat(sheets).extracting(Sheet::name).containsExactly("table", "weeks", "runs");
        assertThat(rows(sheets.get(0))).containsExactly(
                row(2, 1, "Bo", 7, "home", 2, 7, 40, 4, null),
                row(1, 2, "Ada", 8, "home", 1, 5, 20, 2, 90.0));
        assertThat(rows(sheets.get(1))).extracting(each -> each.subList(0, 3)).as("by ISO 8601 the year 2026 has 53 weeks")
                .containsExactly(row("2026-W52", 1, "Bo"), row("2026-W53", 1, "Ada"), row("2026-W53", 2, "Bo"));
        assertThat(rows(sheets.get(2))).contains(row("2026-W52", "Bo", 7, "home", "one", 11, "2026-12-21T00:00:00Z", 4, 20, 2, 200.0));
        sheets.forEach(sheet -> assertThat(rows(sheet)).allMatch(each -> each.size() == sheet.columns().size()));
    }

    @Test
    void aWeeksRunsAreNotReadBeforeTheirRowsAreWritten() {
        List<Integer> read = new ArrayList<>();
        List<Sheet> sheets = LeagueSheets.of(WEEKS, List.of(new Week(1, List.of()), new Week(2, List.of())), Map.of(), week -> {
            read.add(week);
            return List.of(run(week, 7, "Bo", 1, 100), run(week, 8, "Ada", 1, 100));
        });
        assertThat(read).isEmpty();

        Iterator<List<Object>> runs = sheets.get(2).rows().iterator();
        runs.next();
        assertThat(read).containsExactly(1);
    }

    private static List<Sheet> sheets(List<Played> best) {
        return LeagueSheets.of(WEEKS, IntStream.of(1, 2).mapToObj(week -> Week.of(week, in(best, week))).toList(), Map.of(7, "Bo", 8, "Ada"),
                week -> in(best, week));
    }

    private static List<Played> in(List<Played> best, int week) {
        return best.stream().filter(each -> each.week() == week).toList();
    }

    private static Played run(int week, int player, String name, int cleared, double missMm) {
        return new Played(week, player, name, 10 + week, "home", "one", Instant.parse("2026-12-21T00:00:00Z").toEpochMilli(), cleared, 20, 2, missMm, 1);
    }

    private static List<Object> row(Object... cells) {
        return Arrays.asList(cells);
    }

    private static List<List<Object>> rows(Sheet sheet) {
        List<List<Object>> all = new ArrayList<>();
        sheet.rows().forEach(all::add);
        return all;
    }
}
