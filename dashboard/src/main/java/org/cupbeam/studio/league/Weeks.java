package org.cupbeam.studio.league;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.IsoFields;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.cupbeam.studio.store.league.League;
import org.cupbeam.studio.store.league.Span;

/**
 * Weeks one after another, each from Monday 00:00 to Sunday 24:00 by one clock (ISO 8601's weeks). Where that clock is put forward
 * or back in one of them, it has 167 or 169 hours.
 *
 * @param first  a Monday
 * @param number how many
 */
public record Weeks(LocalDate first, int number, ZoneId zone) {
    public static Weeks of(League league) {
        return new Weeks(league.firstDay(), league.weeks(), league.zone());
    }

    /** The Monday of a day's week. */
    public static LocalDate monday(LocalDate of) {
        return of.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    /** The Monday of a week, from 1; that after the last one is when all of them are over. */
    public LocalDate monday(int week) {
        return first.plusWeeks(week - 1L);
    }

    /** As ISO 8601 has it, {@code 2026-W48}; its year is that of its Thursday. */
    public String name(int week) {
        LocalDate monday = monday(week);
        return String.format(Locale.ROOT, "%04d-W%02d", monday.get(IsoFields.WEEK_BASED_YEAR),
                monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    }

    /** When a week begins, ms since 1970. */
    public long fromMs(int week) {
        return monday(week).atStartOfDay(zone).toInstant().toEpochMilli();
    }

    /** When a week is over, ms since 1970. */
    public long toMs(int week) {
        return fromMs(week + 1);
    }

    public Span span(int week) {
        return new Span(week, fromMs(week), toMs(week));
    }

    /** Those that have begun. */
    public List<Span> begun(long nowMs) {
        return IntStream.rangeClosed(1, Math.min(at(nowMs), number)).mapToObj(this::span).toList();
    }

    /** The week of a moment; 0 before the first, one more than there are after the last. */
    public int at(long nowMs) {
        LocalDate today = Instant.ofEpochMilli(nowMs).atZone(zone).toLocalDate();
        long weeks = Math.floorDiv(today.toEpochDay() - first.toEpochDay(), 7L);
        return (int) Math.max(0, Math.min(number + 1L, weeks + 1));
    }
}
