package org.cupbeam.studio.usage;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.cupbeam.studio.store.Played;

/** Sums of rows that a test gives. */
record PlayedByHand(List<Row> rows) implements Played {
    record Row(int lane, long quarter, long usedMs, int putts, int holed) {
        Row plus(Row other) {
            return new Row(lane, quarter, usedMs + other.usedMs, putts + other.putts, holed + other.holed);
        }
    }

    @Override
    public List<InQuarter> quarters() {
        return sums(rows, Row::quarter).values().stream().map(row -> new InQuarter(row.quarter, row.usedMs, row.putts, row.holed)).toList();
    }

    @Override
    public List<OnLane> lanes() {
        return onLanes(rows);
    }

    @Override
    public List<OnLane> lanesIn(Collection<Long> quarters) {
        return onLanes(rows.stream().filter(row -> quarters.contains(row.quarter)).toList());
    }

    @Override
    public List<Part> parts(Collection<Long> quarters) {
        return rows.stream().filter(row -> quarters.contains(row.quarter)).map(row -> new Part(row.lane, row.quarter, row.usedMs)).toList();
    }

    private static List<OnLane> onLanes(List<Row> of) {
        return sums(of, row -> (long) row.lane).values().stream().map(row -> new OnLane(row.lane, row.usedMs, row.putts, row.holed)).toList();
    }

    private static Map<Long, Row> sums(List<Row> of, Function<Row, Long> key) {
        return of.stream().collect(Collectors.toMap(key, row -> row, Row::plus, TreeMap::new));
    }
}
