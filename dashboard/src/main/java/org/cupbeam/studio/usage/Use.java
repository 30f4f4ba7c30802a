package org.cupbeam.studio.usage;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.LaneQuarter;
import org.cupbeam.studio.usage.OpeningHours.Open;

/**
 * How much a studio's lanes were played on.
 *
 * @param all  of them together
 * @param heat by weekday and hour
 */
public record Use(Period period, Busy all, List<OfLane> lanes, List<OfDay> days, HeatMap heat) {
    /** One lane's part. */
    public record OfLane(LaneName lane, Busy busy) {
    }

    /** One day's part. */
    public record OfDay(LocalDate day, Busy busy) {
    }

    public Use {
        lanes = List.copyOf(lanes);
        days = List.copyOf(days);
    }

    /**
     * Sums up.
     *
     * @param nowMs  what lies after it is not open yet
     * @param lanes  that could be played on
     * @param played each lane's quarters in order, with one more on either side of the period, for the play that goes on
     *               over its ends
     */
    public static Use of(Period period, OpeningHours hours, long nowMs, List<LaneName> lanes, List<LaneQuarter> played) {
        List<Open> open = new ArrayList<>();
        Instant now = Instant.ofEpochMilli(nowMs);
        for (LocalDate day : period.days()) {
            for (Open each : hours.on(day, period.zone())) {
                if (each.from().isBefore(now)) {
                    open.add(new Open(each.from(), each.to().isBefore(now) ? each.to() : now));
                }
            }
        }
        List<Quarter> quarters = Quarter.of(lanes.stream().map(LaneName::id).toList(), open, played).stream()
                .filter(each -> each.startMs() >= period.fromMs() && each.startMs() < period.toMs()).toList();
        Map<Long, Busy> byTime = new TreeMap<>();
        quarters.forEach(each -> byTime.merge(each.startMs(), each.busy(), Busy::plus));
        return new Use(period, byTime.values().stream().reduce(Busy.NOTHING, Busy::plus), lanes(lanes, quarters),
                days(period, byTime), HeatMap.of(byTime, period.zone()));
    }

    private static List<OfLane> lanes(List<LaneName> lanes, List<Quarter> quarters) {
        Map<Integer, Busy> sums = new TreeMap<>();
        quarters.forEach(each -> sums.merge(each.lane(), each.busy(), Busy::plus));
        return lanes.stream().map(lane -> new OfLane(lane, sums.getOrDefault(lane.id(), Busy.NOTHING))).toList();
    }

    private static List<OfDay> days(Period period, Map<Long, Busy> byTime) {
        Map<LocalDate, Busy> sums = new TreeMap<>();
        period.days().forEach(day -> sums.put(day, Busy.NOTHING));
        byTime.forEach((ms, busy) -> sums.merge(Instant.ofEpochMilli(ms).atZone(period.zone()).toLocalDate(), busy, Busy::plus));
        return sums.entrySet().stream().map(each -> new OfDay(each.getKey(), each.getValue())).toList();
    }
}
