package org.cupbeam.studio.usage;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.LaneQuarter;
import org.cupbeam.studio.store.Played;
import org.cupbeam.studio.store.Played.InQuarter;
import org.cupbeam.studio.store.Played.OnLane;
import org.cupbeam.studio.store.Played.Part;

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
     * @param played on these, and no others, in the period
     */
    public static Use of(Period period, OpeningHours hours, long nowMs, List<LaneName> lanes, Played played) {
        OpenTime open = OpenTime.of(period, hours, nowMs);
        List<InQuarter> quarters = played.quarters();
        List<Part> divided = played.parts(quarters.stream().map(InQuarter::quarter).filter(open::isDivided).toList());
        Map<Long, Busy> byTime = new TreeMap<>();
        open.byQuarter().forEach((quarter, ms) -> byTime.put(quarter * LaneQuarter.LENGTH_MS, new Busy(ms * lanes.size(), 0, 0, 0, 0)));
        for (InQuarter each : quarters) {
            long closed = open.isClosed(each.quarter()) ? each.usedMs() : !open.isDivided(each.quarter()) ? 0
                    : closedMs(open, divided, part -> part.quarter() == each.quarter());
            byTime.merge(each.quarter() * LaneQuarter.LENGTH_MS,
                    new Busy(0, each.usedMs() - closed, closed, each.putts(), each.holed()), Busy::plus);
        }
        List<OnLane> onLanes = played.lanes();
        List<OnLane> whileClosed = played.lanesIn(quarters.stream().map(InQuarter::quarter).filter(open::isClosed).toList());
        return new Use(period, byTime.values().stream().reduce(Busy.NOTHING, Busy::plus),
                lanes.stream().map(lane -> new OfLane(lane, busy(lane.id(), open, onLanes, whileClosed, divided))).toList(),
                days(period, byTime), HeatMap.of(byTime, period.zone()));
    }

    private static Busy busy(int lane, OpenTime open, List<OnLane> all, List<OnLane> closed, List<Part> divided) {
        long closedMs = closed.stream().filter(each -> each.lane() == lane).mapToLong(OnLane::usedMs).sum()
                + closedMs(open, divided, part -> part.lane() == lane);
        Busy nobody = new Busy(open.sumMs(), 0, 0, 0, 0);
        return all.stream().filter(each -> each.lane() == lane).map(each -> new Busy(0, each.usedMs() - closedMs, closedMs, each.putts(),
                each.holed())).reduce(nobody, Busy::plus);
    }

    /** What of these is more than their quarters were open. */
    private static long closedMs(OpenTime open, List<Part> parts, Predicate<Part> which) {
        return parts.stream().filter(which).mapToLong(part -> Math.max(0, part.usedMs() - open.in(part.quarter()))).sum();
    }

    private static List<OfDay> days(Period period, Map<Long, Busy> byTime) {
        Map<LocalDate, Busy> sums = new TreeMap<>();
        period.days().forEach(day -> sums.put(day, Busy.NOTHING));
        byTime.forEach((ms, busy) -> sums.merge(Instant.ofEpochMilli(ms).atZone(period.zone()).toLocalDate(), busy, Busy::plus));
        return sums.entrySet().stream().map(each -> new OfDay(each.getKey(), each.getValue())).toList();
    }
}
