package org.cupbeam.studio.usage;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;

/**
 * Whole days in the studio's own time.
 *
 * @param from the first day
 * @param to   the day after the last, at most {@link #LONGEST_DAYS} later
 */
public record Period(LocalDate from, LocalDate to, ZoneId zone) {
    /** The longest, in days. */
    public static final int LONGEST_DAYS = 3_660;

    public Period {
        if (!from.isBefore(to) || from.plusDays(LONGEST_DAYS).isBefore(to)) {
            throw new IllegalArgumentException("from " + from + " to before " + to + ": give a later end, at most "
                    + LONGEST_DAYS + " days after");
        }
    }

    public static Period month(YearMonth month, ZoneId zone) {
        return new Period(month.atDay(1), month.plusMonths(1).atDay(1), zone);
    }

    /** When it begins, ms since 1970. */
    public long fromMs() {
        return from.atStartOfDay(zone).toInstant().toEpochMilli();
    }

    /** When it is over, ms since 1970. */
    public long toMs() {
        return to.atStartOfDay(zone).toInstant().toEpochMilli();
    }

    List<LocalDate> days() {
        return from.datesUntil(to).toList();
    }
}
