package org.cupbeam.studio.usage;

import java.util.List;
import org.cupbeam.studio.store.Fault;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.LaneQuarter;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Visitors;
import org.jdbi.v3.core.Handle;

/**
 * All that the owner asks of a period, a month most often.
 *
 * @param faults  of the lanes' rigs that went on in it, the latest first
 * @param faultMs how long they did, overlapping ones counted each
 */
public record UsageReport(Use use, Visitors visitors, List<Fault> faults, long faultMs) {
    private static final long LANE_IS_GONE_MS = 92L * 24 * 3_600_000;

    public UsageReport {
        faults = List.copyOf(faults);
    }

    /**
     * Asks the store, of the lanes that are seen. A lane counts as open with the studio when it was putted on in the period, or in the three months
     * before.
     */
    public static UsageReport of(Handle h, Sight sight, Period period, OpeningHours hours, long nowMs) {
        long from = period.fromMs();
        long to = Math.min(period.toMs(), Math.max(from, nowMs));
        List<Integer> played = LaneName.played(h, from - LANE_IS_GONE_MS, to);
        List<LaneName> lanes = LaneName.all(h, sight).stream().filter(lane -> played.contains(lane.id())).toList();
        Use use = Use.of(period, hours, nowMs, lanes,
                LaneQuarter.between(h, sight, from, period.toMs()));
        List<Fault> faults = Fault.between(h, sight, from, to);
        return new UsageReport(use, Visitors.between(h, sight, from, period.toMs()), faults,
                faults.stream().mapToLong(fault -> fault.lastedMs(from, to)).sum());
    }

    /**
     * Balls that had to be fetched from the cup: every ball holed, in a run or not, lies there until somebody takes it
     * out. Nothing sees a hand take it, so this counts what was put in; how often that made somebody go is
     * {@link Visitors#emptied()}.
     */
    public int ballsFetched() {
        return use.all().holed();
    }
}
