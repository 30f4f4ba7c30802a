package org.cupbeam.studio.usage;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * Play by weekday and hour, by the studio's clock.
 *
 * @param cells all 168, Monday's midnight first
 */
public record HeatMap(List<Cell> cells) {
    private static final int HOURS = 24;
    private static final int DAYS = 7;

    /** One hour of one day of the week, summed over the weeks and the lanes. */
    public record Cell(DayOfWeek day, int hour, Busy busy) {
        /** Whether the studio was ever open then. */
        public boolean open() {
            return busy.openMs() > 0;
        }
    }

    public HeatMap {
        cells = List.copyOf(cells);
    }

    /** @param byTime the play in each quarter of an hour, by its beginning, ms since 1970 */
    static HeatMap of(Map<Long, Busy> byTime, ZoneId zone) {
        Busy[] sums = new Busy[DAYS * HOURS];
        byTime.forEach((ms, busy) -> {
            ZonedDateTime local = Instant.ofEpochMilli(ms).atZone(zone);
            int at = (local.getDayOfWeek().getValue() - 1) * HOURS + local.getHour();
            sums[at] = sums[at] == null ? busy : sums[at].plus(busy);
        });
        List<Cell> cells = new ArrayList<>();
        for (int i = 0; i < sums.length; i++) {
            cells.add(new Cell(DayOfWeek.of(i / HOURS + 1), i % HOURS, sums[i] == null ? Busy.NOTHING : sums[i]));
        }
        return new HeatMap(cells);
    }

    public Cell at(DayOfWeek day, int hour) {
        return cells.get((day.getValue() - 1) * HOURS + hour);
    }

    /** The hours with the largest share of play, the busiest first; of equal ones the earlier. */
    public List<Cell> busiest(int most) {
        return open(Comparator.comparingDouble(cell -> -cell.busy().share()), most);
    }

    /** The open hours with the smallest share of play, the idlest first; of equal ones the earlier. */
    public List<Cell> idlest(int most) {
        return open(Comparator.comparingDouble(cell -> cell.busy().share()), most);
    }

    private List<Cell> open(Comparator<Cell> order, int most) {
        return cells.stream().filter(Cell::open).sorted(order).limit(most).toList();
    }
}
