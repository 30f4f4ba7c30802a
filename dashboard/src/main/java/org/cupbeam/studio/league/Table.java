package org.cupbeam.studio.league;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.cupbeam.studio.store.league.Played;

/**
 * Who stands where, of the runs that were handed in: in one week, or in several taken together.
 *
 * @param rows the best first
 */
public record Table(List<Row> rows) {
    /**
     * A player's.
     *
     * @param place   from 1; players whose sums are level share one, and the next one is passed over
     * @param studios in which the runs were played
     * @param sum     over all weeks
     * @param weeks   what each week came to that the player played in
     */
    public record Row(int place, boolean shared, int player, String name, SortedSet<String> studios, Sum sum,
                      SortedMap<Integer, Sum> weeks) {
    }

    public Table {
        rows = List.copyOf(rows);
    }

    /** @param best the best runs of each player in each week, so many as count */
    public static Table of(List<Played> best) {
        Map<Integer, List<Played>> byPlayer = best.stream().collect(Collectors.groupingBy(Played::player));
        List<Row> unplaced = byPlayer.values().stream().map(Table::row)
                .sorted(Comparator.comparing(Row::sum).thenComparing(Row::name).thenComparing(Row::player)).toList();
        return new Table(placed(unplaced));
    }

    /** One week of several. */
    public static Table of(List<Played> best, int week) {
        return of(best.stream().filter(each -> each.week() == week).toList());
    }

    private static Row row(List<Played> of) {
        SortedMap<Integer, Sum> weeks = new TreeMap<>(of.stream().collect(Collectors.groupingBy(Played::week,
                Collectors.collectingAndThen(Collectors.toList(), Sum::of))));
        SortedSet<String> studios = of.stream().map(Played::studio).collect(Collectors.toCollection(TreeSet::new));
        Played any = of.get(0);
        return new Row(0, false, any.player(), any.name(), studios, Sum.of(of), weeks);
    }

    private static List<Row> placed(List<Row> sorted) {
        List<Row> placed = new ArrayList<>(sorted.size());
        for (int i = 0; i < sorted.size(); i++) {
            Row row = sorted.get(i);
            boolean asBefore = i > 0 && level(sorted.get(i - 1), row);
            boolean asAfter = i + 1 < sorted.size() && level(row, sorted.get(i + 1));
            placed.add(new Row(asBefore ? placed.get(i - 1).place() : i + 1, asBefore || asAfter, row.player(), row.name(),
                    row.studios(), row.sum(), row.weeks()));
        }
        return placed;
    }

    private static boolean level(Row one, Row other) {
        return one.sum().compareTo(other.sum()) == 0;
    }
}
