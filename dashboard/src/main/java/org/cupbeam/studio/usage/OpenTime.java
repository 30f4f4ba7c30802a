package org.cupbeam.studio.usage;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import org.cupbeam.studio.store.LaneQuarter;
import org.cupbeam.studio.usage.OpeningHours.Open;

/**
 * How much of each quarter of an hour a studio is open: the grain that everything is summed from. Every zone's days begin with one.
 *
 * @param byQuarter ms, above 0, of those in which it is
 */
record OpenTime(Map<Long, Long> byQuarter) {
    /** @param nowMs what lies after it is not open yet */
    static OpenTime of(Period period, OpeningHours hours, long nowMs) {
        Map<Long, Long> ms = new TreeMap<>();
        for (LocalDate day : period.days()) {
            for (Open each : hours.on(day, period.zone())) {
                if (each.from().isBefore(Instant.ofEpochMilli(nowMs))) {
                    add(ms, each.from().toEpochMilli(), Math.min(nowMs, each.to().toEpochMilli()));
                }
            }
        }
        ms.keySet().removeIf(quarter -> quarter * LaneQuarter.LENGTH_MS < period.fromMs()
                || quarter * LaneQuarter.LENGTH_MS >= period.toMs());
        return new OpenTime(ms);
    }

    private static void add(Map<Long, Long> ms, long from, long to) {
        for (long quarter = Math.floorDiv(from, LaneQuarter.LENGTH_MS); quarter * LaneQuarter.LENGTH_MS < to; quarter++) {
            long start = quarter * LaneQuarter.LENGTH_MS;
            ms.merge(quarter, Math.min(to, start + LaneQuarter.LENGTH_MS) - Math.max(from, start), Long::sum);
        }
    }

    long in(long quarter) {
        return byQuarter.getOrDefault(quarter, 0L);
    }

    boolean isClosed(long quarter) {
        return in(quarter) == 0;
    }

    /** Whether only a part of it is open. */
    boolean isDivided(long quarter) {
        return in(quarter) > 0 && in(quarter) < LaneQuarter.LENGTH_MS;
    }

    long sumMs() {
        return byQuarter.values().stream().mapToLong(Long::longValue).sum();
    }
}
