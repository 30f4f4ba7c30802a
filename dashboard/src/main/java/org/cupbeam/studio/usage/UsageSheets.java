package org.cupbeam.studio.usage;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.studio.store.Fault;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.sheet.Sheet;

/** A report's numbers as tables, for other programs. Times are in hours, to a hundredth. */
public final class UsageSheets {
    private static final List<String> BUSY = List.of("open_h", "play_h", "play_while_closed_h", "putts", "holed");
    private static final double HOUR_MS = 3_600_000;

    private UsageSheets() {
    }

    /** All tables of a report. */
    public static List<Sheet> of(UsageReport report) {
        return List.of(summary(report), lanes(report.use()), days(report.use()), hours(report.use()), faults(report));
    }

    static Sheet summary(UsageReport report) {
        Use use = report.use();
        Stream<Object> counts = Stream.of(report.visitors().runs(), report.visitors().duels(),
                report.visitors().players(), report.visitors().returning(), report.ballsFetched(),
                report.visitors().emptied(), report.faults().size(), hours(report.faultMs()));
        return new Sheet("summary", columns(List.of("from", "to", "time_zone", "lanes"), List.of("runs", "duels",
                "players", "returning_players", "balls_fetched", "times_cup_emptied", "faults", "fault_h")),
                List.of(row(Stream.of(use.period().from().toString(), use.period().to().minusDays(1).toString(),
                        use.period().zone().getId(), use.lanes().size()), busy(use.all()), counts)));
    }

    static Sheet lanes(Use use) {
        return new Sheet("lanes", columns(List.of("studio", "lane"), List.of()), use.lanes().stream().map(each ->
                row(Stream.of(each.lane().studio(), each.lane().lane()), busy(each.busy()))).toList());
    }

    static Sheet days(Use use) {
        return new Sheet("days", columns(List.of("day"), List.of()), use.days().stream().map(each ->
                row(Stream.of(each.day().toString()), busy(each.busy()))).toList());
    }

    static Sheet hours(Use use) {
        return new Sheet("hours_of_the_week", columns(List.of("weekday", "hour"), List.of()), use.heat().cells().stream()
                .map(each -> row(Stream.of(OpeningText.word(each.day()), each.hour()), busy(each.busy()))).toList());
    }

    static Sheet faults(UsageReport report) {
        return new Sheet("faults", List.of("studio", "lane", "words", "began", "ended"),
                report.faults().stream().map(each -> fault(report.use(), each)).toList());
    }

    private static List<Object> fault(Use use, Fault fault) {
        LaneName lane = use.lanes().stream().map(Use.OfLane::lane).filter(name -> name.id() == fault.lane()).findFirst()
                .orElse(new LaneName(fault.lane(), null, null));
        return row(Stream.of(lane.studio(), lane.lane(), fault.words(), Instant.ofEpochMilli(fault.beganMs()).toString(),
                fault.endedMs() == null ? null : Instant.ofEpochMilli(fault.endedMs()).toString()));
    }

    private static Stream<Object> busy(Busy busy) {
        return Stream.of(hours(busy.openMs()), hours(busy.playMs()), hours(busy.closedMs()), busy.putts(), busy.holed());
    }

    private static double hours(long ms) {
        return Math.round(100 * ms / HOUR_MS) / 100.0;
    }

    private static List<String> columns(List<String> before, List<String> after) {
        return Stream.of(before, BUSY, after).flatMap(List::stream).toList();
    }

    private static List<Object> row(Stream<?>... parts) {
        return Arrays.stream(parts).flatMap(part -> part).map(cell -> (Object) cell).toList();
    }
}
