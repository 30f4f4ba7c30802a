package org.cupbeam.studio.usage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.cupbeam.studio.store.LaneQuarter;
import org.cupbeam.studio.usage.OpeningHours.Open;

/** A quarter of an hour of one lane: the grain that everything is summed from. Every zone's days begin with one. */
record Quarter(int lane, long startMs, Busy busy) {

    /**
     * Every quarter in which a lane was open or played.
     *
     * @param lanes  that count as open when the studio is
     * @param open   when that is, in order
     * @param played what lanes did, each lane's in order
     */
    static List<Quarter> of(List<Integer> lanes, List<Open> open, List<LaneQuarter> played) {
        Map<Long, Long> openMs = openMs(open);
        Map<Integer, Map<Long, Quarter>> byLane = new TreeMap<>();
        lanes.forEach(lane -> openMs.forEach((start, ms) -> byLane.computeIfAbsent(lane, l -> new TreeMap<>())
                .put(start, new Quarter(lane, start, new Busy(ms, 0, 0, 0, 0)))));
        Map<LaneQuarter, Long> playMs = playMs(played);
        for (LaneQuarter each : played) {
            long mayMs = openMs.getOrDefault(each.startMs(), 0L);
            long inside = Math.min(playMs.get(each), mayMs);
            Busy busy = new Busy(0, inside, playMs.get(each) - inside, each.putts(), each.holed());
            byLane.computeIfAbsent(each.lane(), l -> new TreeMap<>()).merge(each.startMs(),
                    new Quarter(each.lane(), each.startMs(), busy), Quarter::plus);
        }
        return byLane.values().stream().flatMap(quarters -> quarters.values().stream()).toList();
    }

    private Quarter plus(Quarter other) {
        return new Quarter(lane, startMs, busy.plus(other.busy));
    }

    /** How much of each quarter is open. */
    private static Map<Long, Long> openMs(List<Open> open) {
        Map<Long, Long> ms = new TreeMap<>();
        for (Open each : open) {
            long from = each.from().toEpochMilli();
            long to = each.to().toEpochMilli();
            for (long start = from - Math.floorMod(from, LaneQuarter.LENGTH_MS); start < to;
                    start += LaneQuarter.LENGTH_MS) {
                ms.merge(start, Math.min(to, start + LaneQuarter.LENGTH_MS) - Math.max(from, start), Long::sum);
            }
        }
        return ms;
    }

    /** Play within each quarter, and its part of what lies between its putts and the next one's. */
    private static Map<LaneQuarter, Long> playMs(List<LaneQuarter> played) {
        Map<LaneQuarter, Long> ms = new HashMap<>();
        List<LaneQuarter> all = new ArrayList<>(played);
        for (int i = 0; i < all.size(); i++) {
            LaneQuarter each = all.get(i);
            ms.merge(each, each.playMs(), Long::sum);
            if (i > 0 && all.get(i - 1).lane() == each.lane() && all.get(i - 1).playUntil(each) > 0) {
                ms.merge(all.get(i - 1), each.startMs() - all.get(i - 1).lastMs(), Long::sum);
                ms.merge(each, each.firstMs() - each.startMs(), Long::sum);
            }
        }
        return ms;
    }
}
