package org.cupbeam.studio.league;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class WeeksTest {
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final long HOUR_MS = 3_600_000;

    /** The calendar of 2026, whose first day is a Thursday, by ISO 8601: 53 weeks, the last one to 3 January 2027. */
    @Test
    void areNamedAsIsoHasThem() {
        Weeks weeks = new Weeks(LocalDate.of(2026, 12, 21), 4, BERLIN);

        assertThat(weeks.name(1)).isEqualTo("2026-W52");
        assertThat(weeks.name(2)).isEqualTo("2026-W53");
        assertThat(weeks.name(3)).isEqualTo("2027-W01");
    }

    /** Against java.time's own formatter of ISO week dates, which we do not use. */
    @Property(tries = 300)
    void areNamedAsJavasOwnFormatterHasThem(@ForAll @IntRange(min = 0, max = 30_000) int day) {
        LocalDate any = LocalDate.ofEpochDay(day);
        LocalDate monday = Weeks.monday(any);

        assertThat(monday.getDayOfWeek()).isEqualTo(DayOfWeek.MONDAY);
        assertThat(any.toEpochDay() - monday.toEpochDay()).isBetween(0L, 6L);
        assertThat(DateTimeFormatter.ISO_WEEK_DATE.format(any)).startsWith(new Weeks(monday, 1, BERLIN).name(1));
    }

    @Property(tries = 300)
    void aMomentIsInTheWeekWhoseEndsAreAroundIt(@ForAll @IntRange(min = -30, max = 60) int days, @ForAll @IntRange(min = 0, max = 86_399) int s) {
        Weeks weeks = new Weeks(LocalDate.of(2026, 10, 12), 4, BERLIN);
        long ms = weeks.fromMs(1) + (days * 86_400L + s) * 1_000;
        int at = weeks.at(ms);

        assertThat(at == 0).isEqualTo(ms < weeks.fromMs(1));
        assertThat(at == 5).isEqualTo(ms >= weeks.toMs(4));
        if (at >= 1 && at <= 4) {
            assertThat(ms).isGreaterThanOrEqualTo(weeks.fromMs(at)).isLessThan(weeks.toMs(at));
        }
        assertThat(weeks.begun(ms)).hasSize(Math.min(at, 4));
    }

    @Test
    void oneInWhichTheClockIsPutBackHasAnHourMore() {
        Weeks weeks = new Weeks(LocalDate.of(2026, 10, 19), 2, BERLIN);

        assertThat(weeks.toMs(1) - weeks.fromMs(1)).isEqualTo(169 * HOUR_MS);
        assertThat(weeks.toMs(2) - weeks.fromMs(2)).isEqualTo(168 * HOUR_MS);
        assertThat(weeks.at(Instant.parse("2026-10-25T22:59:59Z").toEpochMilli())).isEqualTo(1);
        assertThat(weeks.at(Instant.parse("2026-10-25T23:00:00Z").toEpochMilli())).isEqualTo(2);
    }
}
