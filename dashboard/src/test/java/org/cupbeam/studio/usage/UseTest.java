package org.cupbeam.studio.usage;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.LaneQuarter;
import org.cupbeam.studio.usage.PlayedByHand.Row;
import org.junit.jupiter.api.Test;

class UseTest {
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final LaneName NORTH = new LaneName(1, "home", "north");
    private static final LaneName SOUTH = new LaneName(2, "home", "south");
    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;
    private static final long NEVER = Long.MAX_VALUE / 2;
    private static final OpeningHours HOURS = OpeningHours.parse("mon-sun 10:00-20:00");

    @Test
    void setsHoursInPlayAgainstHoursOpenOfEveryLane() {
        Use use = use(day("2026-11-25"), played(NORTH, "2026-11-25T09:00:00Z", 20, 10 * MINUTE));

        assertThat(use.all()).isEqualTo(new Busy(20 * HOUR, 10 * MINUTE, 0, 20, 8));
        assertThat(use.all().share()).isEqualTo(1 / 120.0);
        assertThat(use.lanes()).containsExactly(new Use.OfLane(NORTH, new Busy(10 * HOUR, 10 * MINUTE, 0, 20, 8)),
                new Use.OfLane(SOUTH, new Busy(10 * HOUR, 0, 0, 0, 0)));
    }

    /** Two lanes in the quarter hour in which the studio opens after ten minutes: no lane plays for longer than it is open. */
    @Test
    void givesPlayOfAQuarterThatIsHalfOpenLaneByLane() {
        OpeningHours late = OpeningHours.parse("mon-sun 10:10-20:00");
        Use use = Use.of(day("2026-11-25"), late, NEVER, List.of(NORTH, SOUTH), new PlayedByHand(List.of(
                played(NORTH, "2026-11-25T09:00:00Z", 5, 12 * MINUTE), played(SOUTH, "2026-11-25T09:00:00Z", 5, 3 * MINUTE))));

        assertThat(use.all().playMs()).isEqualTo(8 * MINUTE);
        assertThat(use.all().closedMs()).isEqualTo(7 * MINUTE);
        assertThat(use.lanes()).extracting(each -> each.busy().playMs()).containsExactly(5 * MINUTE, 3 * MINUTE);
        assertThat(use.lanes()).extracting(each -> each.busy().closedMs()).containsExactly(7 * MINUTE, 0L);
    }

    @Test
    void tellsPlayWhileClosedFromPlayWhileOpen() {
        Use use = use(day("2026-11-25"), played(NORTH, "2026-11-25T08:45:00Z", 9, 15 * MINUTE),
                played(NORTH, "2026-11-25T09:00:00Z", 9, 15 * MINUTE));

        assertThat(use.all().closedMs()).isEqualTo(15 * MINUTE);
        assertThat(use.all().playMs()).isEqualTo(15 * MINUTE);
        assertThat(use.heat().at(DayOfWeek.WEDNESDAY, 9).open()).isFalse();
    }

    @Test
    void keepsToTheStudiosClockOnTheDayThatItIsSetBack() {
        OpeningHours nights = OpeningHours.parse("sun 00:00-06:00");
        Row summer = played(NORTH, "2026-10-25T00:30:00Z", 5, 10 * MINUTE);
        Row winter = played(NORTH, "2026-10-25T01:30:00Z", 5, 12 * MINUTE);

        Use use = Use.of(day("2026-10-25"), nights, NEVER, List.of(NORTH), new PlayedByHand(List.of(summer, winter)));

        assertThat(use.all().openMs()).isEqualTo(7 * HOUR);
        assertThat(use.heat().at(DayOfWeek.SUNDAY, 2).busy()).isEqualTo(new Busy(2 * HOUR, 22 * MINUTE, 0, 10, 4));
        assertThat(Use.of(day("2026-03-29"), nights, NEVER, List.of(NORTH), new PlayedByHand(List.of())).all().openMs()).isEqualTo(5 * HOUR);
    }

    @Test
    void countsNothingOpenThatLiesAhead() {
        long now = ms("2026-11-25T10:30:00Z");

        Use use = Use.of(Period.month(YearMonth.of(2026, 11), BERLIN), HOURS, now, List.of(NORTH), new PlayedByHand(List.of()));

        assertThat(use.all().openMs()).isEqualTo(24 * 10 * HOUR + 90 * MINUTE);
        assertThat(use.days()).hasSize(30);
        assertThat(use.days().get(24).busy().openMs()).isEqualTo(90 * MINUTE);
        assertThat(use.days().get(29).busy()).isEqualTo(Busy.NOTHING);
        assertThat(use.days().get(29).busy().share()).isNaN();
    }

    @Test
    void findsTheBusiestAndTheIdlestHours() {
        Use use = use(day("2026-11-25"), played(NORTH, "2026-11-25T17:00:00Z", 9, 14 * MINUTE),
                played(SOUTH, "2026-11-25T16:15:00Z", 30, 9 * MINUTE));

        assertThat(use.heat().busiest(2)).extracting(HeatMap.Cell::hour).containsExactly(18, 17);
        assertThat(use.heat().idlest(3)).extracting(HeatMap.Cell::hour).containsExactly(10, 11, 12);
        assertThat(use.heat().idlest(100)).hasSize(10);
    }

    private static Use use(Period period, Row... played) {
        return Use.of(period, HOURS, NEVER, List.of(NORTH, SOUTH), new PlayedByHand(List.of(played)));
    }

    private static Period day(String date) {
        LocalDate day = LocalDate.parse(date);
        return new Period(day, day.plusDays(1), BERLIN);
    }

    private static Row played(LaneName lane, String from, int putts, long usedMs) {
        return new Row(lane.id(), ms(from) / LaneQuarter.LENGTH_MS, usedMs, putts, putts * 4 / 10);
    }

    private static long ms(String instant) {
        return Instant.parse(instant).toEpochMilli();
    }
}
