package org.cupbeam.studio.usage;

import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.cupbeam.studio.usage.OpeningHours.Span;

/** Opening hours as text, and back. */
final class OpeningText {
    private static final Pattern DAYS = Pattern.compile("([a-z]{3})(?:-([a-z]{3}))?\\s+(.+)");
    private static final Pattern SPAN = Pattern.compile("([0-2]?\\d):([0-5]\\d)\\s*-\\s*([0-2]?\\d):([0-5]\\d)");
    private static final String REMEDY = "write it as \"tue-fri 12:00-22:00; sat 10:00-14:00, 15:00-20:00\"";
    private static final int LONGEST = 1_000;

    private OpeningText() {
    }

    static OpeningHours parse(String text) {
        if (text.length() > LONGEST) {
            throw bad("the text", "is over " + LONGEST + " characters long");
        }
        Map<DayOfWeek, List<Span>> week = new EnumMap<>(DayOfWeek.class);
        for (String part : text.toLowerCase(Locale.ROOT).split(";")) {
            if (!part.isBlank()) {
                days(part.strip(), week);
            }
        }
        return new OpeningHours(week);
    }

    static String of(OpeningHours hours) {
        List<String> parts = new ArrayList<>();
        for (int from = 1; from <= 7; from++) {
            List<Span> spans = hours.on(DayOfWeek.of(from));
            int to = from;
            while (to < 7 && hours.on(DayOfWeek.of(to + 1)).equals(spans)) {
                to++;
            }
            if (!spans.isEmpty()) {
                String days = word(DayOfWeek.of(from)) + (to == from ? "" : "-" + word(DayOfWeek.of(to)));
                parts.add(days + " " + spans.stream().map(OpeningText::span).collect(Collectors.joining(", ")));
            }
            from = to;
        }
        return String.join("; ", parts);
    }

    static String word(DayOfWeek day) {
        return day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH).toLowerCase(Locale.ROOT);
    }

    private static void days(String part, Map<DayOfWeek, List<Span>> week) {
        Matcher days = DAYS.matcher(part);
        if (!days.matches()) {
            throw bad(part, "is not days and hours");
        }
        int from = day(days.group(1), part).getValue();
        int to = days.group(2) == null ? from : day(days.group(2), part).getValue();
        int count = Math.floorMod(to - from, 7) + 1;
        for (String text : days.group(3).split(",")) {
            Span span = span(text.strip(), part);
            for (int i = 0; i < count; i++) {
                week.computeIfAbsent(DayOfWeek.of(from).plus(i), d -> new ArrayList<>()).add(span);
            }
        }
    }

    private static DayOfWeek day(String word, String part) {
        for (DayOfWeek each : DayOfWeek.values()) {
            if (word(each).equals(word)) {
                return each;
            }
        }
        throw bad(part, "has no day \"" + word + "\"");
    }

    private static Span span(String text, String part) {
        Matcher span = SPAN.matcher(text);
        if (!span.matches()) {
            throw bad(part, "has no hours in \"" + text + "\"");
        }
        return new Span(minute(span, 1), minute(span, 3));
    }

    private static int minute(Matcher span, int group) {
        return Integer.parseInt(span.group(group)) * 60 + Integer.parseInt(span.group(group + 1));
    }

    private static String span(Span span) {
        return clock(span.fromMinute()) + "-" + clock(span.toMinute());
    }

    private static String clock(int minute) {
        return String.format(Locale.ROOT, "%02d:%02d", minute / 60, minute % 60);
    }

    private static IllegalArgumentException bad(String where, String what) {
        return new IllegalArgumentException("opening hours: " + where + ": " + what + "; " + REMEDY);
    }
}
