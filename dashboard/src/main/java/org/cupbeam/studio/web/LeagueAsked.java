package org.cupbeam.studio.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Words;
import org.cupbeam.studio.league.Weeks;
import org.cupbeam.studio.store.league.League;

/**
 * A league as somebody wants it opened.
 *
 * @param first   any day of the first week, as 2026-11-25; {@code last} likewise
 * @param runs    that count of each week; null for one
 * @param studios null or empty for all
 */
record LeagueAsked(String name, ObjectNode drill, String breaks, String slope, String first, String last, Integer runs,
                   List<String> studios) {
    private static final int MOST_STUDIOS = 500;

    /** @throws IllegalArgumentException for what cannot be a league, with what would do */
    League league(ZoneId zone) {
        LocalDate monday = Weeks.monday(day("first", first));
        if (studios != null && (studios.size() > MOST_STUDIOS || studios.stream().anyMatch(Objects::isNull))) {
            throw Refusal.badRequest("Choose all studios, or at most " + MOST_STUDIOS + " of them.");
        }
        Tags tags = new Tags(tag(breaks, Tags.Break.class), tag(slope, Tags.Slope.class));
        return new League(name, played(), tags, zone, monday, weeks(monday, day("last", last)), runs == null ? 1 : runs,
                studios == null ? Set.of() : Set.copyOf(studios));
    }

    /** How many weeks there are from a Monday to some day's; none or fewer where that is before. */
    static int weeks(LocalDate monday, LocalDate last) {
        return Math.toIntExact(ChronoUnit.WEEKS.between(monday, Weeks.monday(last)) + 1);
    }

    static LocalDate day(String what, String textOrNull) {
        try {
            LocalDate day = textOrNull == null ? null : LocalDate.parse(textOrNull);
            if (day != null && day.getYear() >= 1970 && day.getYear() <= 9000) {
                return day;
            }
        } catch (DateTimeException e) {
            // Told below.
        }
        throw Refusal.badRequest(what + ": give a day as 2026-11-25.");
    }

    private Drill played() {
        if (drill == null) {
            throw Refusal.badRequest("A drill is missing.");
        }
        try {
            return DrillJson.read(drill.toString());
        } catch (BadMessage e) {
            throw Refusal.badRequest("That is no drill yet: " + e.getMessage() + ".");
        }
    }

    private static <E extends Enum<E> & Worded> E tag(String wordOrNull, Class<E> type) {
        if (wordOrNull == null || wordOrNull.isEmpty()) {
            return null;
        }
        E found = Words.find(type, wordOrNull);
        if (found == null) {
            throw Refusal.badRequest("How the putt lies is none of those there are.");
        }
        return found;
    }
}
