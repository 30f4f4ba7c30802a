package org.cupbeam.studio.league;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.cupbeam.studio.store.league.Played;
import org.cupbeam.studio.store.sheet.Sheet;

/** A league's tables for other programs: over all weeks, week by week, and the runs that they are made of. */
public final class LeagueSheets {
    private static final List<String> SUMS = List.of("player", "player_number", "studios", "runs", "stations_cleared", "attempts",
            "holed", "mean_miss_mm");

    private LeagueSheets() {
    }

    /**
     * Rows are made while they are written: those of half a year, all at once, are more than a small host's memory.
     *
     * @param begun weeks that have begun
     * @param names of players
     * @param best  finds the best runs of each player in a week, so many as count
     */
    public static List<Sheet> of(Weeks weeks, List<Week> begun, Map<Integer, String> names, IntFunction<List<Played>> best) {
        return List.of(new Sheet("table", columns("weeks"), rows(() -> Table.of(begun, names).rows().stream().map(row ->
                        cells(row.weeks().size(), row)))),
                new Sheet("weeks", columns("week"), rows(() -> begun.stream().flatMap(week -> inWeek(weeks, week, names)))),
                new Sheet("runs", List.of("week", "player", "player_number", "studio", "lane", "run_number", "began", "stations_cleared",
                        "attempts", "holed", "mean_miss_mm"), rows(() -> begun.stream().flatMap(week -> best.apply(week.number()).stream())
                        .map(each -> cells(weeks, each)))));
    }

    private static Iterable<List<Object>> rows(Supplier<Stream<List<Object>>> made) {
        return () -> made.get().iterator();
    }

    private static Stream<List<Object>> inWeek(Weeks weeks, Week week, Map<Integer, String> names) {
        String name = weeks.name(week.number());
        return Table.of(List.of(week), names).rows().stream().map(row -> cells(name, row));
    }

    private static List<String> columns(String first) {
        List<String> all = new ArrayList<>(List.of(first, "place"));
        all.addAll(SUMS);
        return all;
    }

    private static List<Object> cells(Object first, Table.Row row) {
        Sum sum = row.sum();
        return Arrays.asList(first, row.place(), row.name(), row.player(), String.join(" ", row.studios()), sum.runs(), sum.cleared(),
                sum.attempts(), sum.holed(), Double.isInfinite(sum.missMm()) ? null : (Object) sum.missMm());
    }

    private static List<Object> cells(Weeks weeks, Played run) {
        return Arrays.asList(weeks.name(run.week()), run.name(), run.player(), run.studio(), run.lane(), run.run(),
                Instant.ofEpochMilli(run.atMs()).toString(), run.cleared(), run.attempts(), run.holed(),
                Double.isNaN(run.meanMissMm()) ? null : (Object) run.meanMissMm());
    }
}
