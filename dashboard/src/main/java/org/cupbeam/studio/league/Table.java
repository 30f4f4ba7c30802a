package org.cupbeam.studio.league;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.cupbeam.studio.league.Week.Standing;
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

    /** @param names of players; whoever has none is not in it */
    public static Table of(List<Week> weeks, Map<Integer, String> names) {
        Map<Integer, SortedMap<Integer, Sum>> sums = new HashMap<>();
        Map<Integer, SortedSet<String>> studios = new HashMap<>();
        for (Week week : weeks) {
            for (Standing each : week.standings()) {
                if (names.containsKey(each.player())) {
                    sums.computeIfAbsent(each.player(), player -> new TreeMap<>()).put(week.number(), each.sum());
                    studios.computeIfAbsent(each.player(), player -> new TreeSet<>()).addAll(each.studios());
                }
            }
        }
        return new Table(placed(sums.entrySet().stream().map(each -> new Row(0, false, each.getKey(), names.get(each.getKey()),
                        studios.get(each.getKey()), Sum.over(each.getValue().values()), each.getValue()))
                .sorted(Comparator.comparing(Row::sum).thenComparing(Row::name).thenComparing(Row::player)).toList()));
    }

    /** @param best the best runs of each player in each week, so many as count */
    static Table of(List<Played> best) {
        List<Week> weeks = best.stream().collect(Collectors.groupingBy(Played::week, TreeMap::new, Collectors.toList())).entrySet().stream()
                .map(each -> Week.of(each.getKey(), each.getValue())).toList();
        return of(weeks, best.stream().collect(Collectors.toMap(Played::player, Played::name, (one, same) -> one)));
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
