package org.cupbeam.studio.web;

import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.Visitors;
import org.cupbeam.studio.usage.Busy;
import org.cupbeam.studio.usage.HeatMap;
import org.cupbeam.studio.usage.StudioTime;
import org.cupbeam.studio.usage.Use;
import org.cupbeam.studio.usage.UsageReport;

/**
 * A month of use as the page reads it. Times are in ms; a share is of the open time, null where there was none.
 *
 * @param now the month that goes on
 */
record UsageSaid(String month, String now, String zone, String hours, Figures all, List<Lane> lanes, List<Day> days,
                 List<Cell> heat, List<Cell> busiest, List<Cell> idlest, Visitors visitors, int newcomers,
                 int ballsFetched, List<Fault> faults, long faultMs) {
    private static final int MOST_NAMED = 3;

    record Figures(long openMs, long playMs, long closedMs, int putts, int holed, Double share) {
        static Figures of(Busy busy) {
            return new Figures(busy.openMs(), busy.playMs(), busy.closedMs(), busy.putts(), busy.holed(),
                    Double.isNaN(busy.share()) ? null : busy.share());
        }
    }

    record Lane(String studio, String lane, Figures figures) {
    }

    /** @param day as 2026-11-25 */
    record Day(String day, Figures figures) {
    }

    /** @param day of the week, 1 is Monday */
    record Cell(int day, int hour, Figures figures) {
        static List<Cell> of(List<HeatMap.Cell> cells) {
            return cells.stream().map(cell -> new Cell(cell.day().getValue(), cell.hour(), Figures.of(cell.busy())))
                    .toList();
        }
    }

    /** @param endedMs null while it goes on */
    record Fault(String studio, String lane, String words, long beganMs, Long endedMs) {
    }

    static UsageSaid of(YearMonth month, YearMonth now, StudioTime time, UsageReport report, List<LaneName> lanes) {
        Use use = report.use();
        return new UsageSaid(month.toString(), now.toString(), time.zone().getId(), time.hours().text(),
                Figures.of(use.all()),
                use.lanes().stream().map(each -> new Lane(each.lane().studio(), each.lane().lane(),
                        Figures.of(each.busy()))).toList(),
                use.days().stream().map(each -> new Day(each.day().toString(), Figures.of(each.busy()))).toList(),
                Cell.of(use.heat().cells()), Cell.of(use.heat().busiest(MOST_NAMED)),
                Cell.of(use.heat().idlest(MOST_NAMED)), report.visitors(), report.visitors().newcomers(),
                report.ballsFetched(), faults(report, lanes), report.faultMs());
    }

    private static List<Fault> faults(UsageReport report, List<LaneName> lanes) {
        Map<Integer, LaneName> names = lanes.stream().collect(Collectors.toMap(LaneName::id, lane -> lane));
        return report.faults().stream().map(each -> {
            LaneName lane = names.get(each.lane());
            return new Fault(lane.studio(), lane.lane(), each.words(), each.beganMs(), each.endedMs());
        }).toList();
    }
}
