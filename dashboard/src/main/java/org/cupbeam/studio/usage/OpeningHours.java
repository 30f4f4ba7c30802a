package org.cupbeam.studio.usage;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * When a studio is open in a week, by its own clock. As text: {@code "tue-fri 12:00-22:00; sat 10:00-14:00,
 * 15:00-20:00"}; a day that is not named is closed.
 *
 * @param week the spans of each day, in order, none touching the next; days without are closed
 */
public record OpeningHours(Map<DayOfWeek, List<Span>> week) {
    /** Where nothing was set: every day from 9 to 21. */
    public static final OpeningHours USUAL = parse("mon-sun 09:00-21:00");
    static final int DAY_MINUTES = 24 * 60;

    /**
     * A stretch of one day, in minutes since midnight by the clock on the wall.
     *
     * @param toMinute not included; 1440 is midnight at the day's end
     */
    public record Span(int fromMinute, int toMinute) {
        public Span {
            if (fromMinute < 0 || toMinute > DAY_MINUTES || fromMinute >= toMinute) {
                throw new IllegalArgumentException("open from minute " + fromMinute + " to " + toMinute
                        + " of a day; give a later end, at most 24:00, and two days' hours for a night");
            }
        }
    }

    /** A stretch of time, the end not included. */
    public record Open(Instant from, Instant to) {
    }

    public OpeningHours {
        Map<DayOfWeek, List<Span>> sorted = new EnumMap<>(DayOfWeek.class);
        week.forEach((day, spans) -> {
            if (!spans.isEmpty()) {
                sorted.put(day, inOrder(day, spans));
            }
        });
        week = Map.copyOf(sorted);
    }

    /** @throws IllegalArgumentException with what is wrong and what would do */
    public static OpeningHours parse(String text) {
        return OpeningText.parse(text);
    }

    /** The text that reads as these hours. */
    public String text() {
        return OpeningText.of(this);
    }

    /** The spans of a day; none when closed. */
    public List<Span> on(DayOfWeek day) {
        return week.getOrDefault(day, List.of());
    }

    /** When it is open on a date. On the day that the clocks change, an hour may be longer or shorter. */
    public List<Open> on(LocalDate date, ZoneId zone) {
        List<Open> open = new ArrayList<>();
        for (Span each : on(date.getDayOfWeek())) {
            Instant from = at(date, each.fromMinute(), zone);
            Instant to = at(date, each.toMinute(), zone);
            if (from.isBefore(to)) {
                open.add(new Open(from, to));
            }
        }
        return open;
    }

    private static Instant at(LocalDate date, int minute, ZoneId zone) {
        return date.plusDays(minute / DAY_MINUTES).atTime(minute % DAY_MINUTES / 60, minute % 60).atZone(zone)
                .toInstant();
    }

    private static List<Span> inOrder(DayOfWeek day, List<Span> spans) {
        List<Span> sorted = spans.stream().sorted(Comparator.comparingInt(Span::fromMinute)).toList();
        for (int i = 1; i < sorted.size(); i++) {
            if (sorted.get(i).fromMinute() <= sorted.get(i - 1).toMinute()) {
                throw new IllegalArgumentException("two spans of " + OpeningText.word(day)
                        + " overlap or touch; join them, or leave a break between them");
            }
        }
        return sorted;
    }
}
