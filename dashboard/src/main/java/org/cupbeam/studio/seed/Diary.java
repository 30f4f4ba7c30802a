package org.cupbeam.studio.seed;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.cupbeam.studio.usage.OpeningHours;
import org.cupbeam.studio.usage.OpeningHours.Open;

/** Who comes when. */
final class Diary {
    /** Together at a lane, from when until when, in ms since 1970. */
    record Party(List<Person> people, long fromMs, long untilMs) {
    }

    private record Visit(Person person, long atMs, int minutes) {
    }

    private static final Set<MonthDay> CLOSED =
            Set.of(MonthDay.of(12, 24), MonthDay.of(12, 25), MonthDay.of(12, 26), MonthDay.of(1, 1));
    private static final long MINUTE_MS = 60_000;
    private static final long WAIT_FOR_OTHERS_MS = 35 * MINUTE_MS;
    private static final int MOST_TOGETHER = 4;

    private final List<Person> people;
    private final OpeningHours hours;
    private final ZoneId zone;
    private final RandomGenerator random;

    Diary(List<Person> people, OpeningHours hours, ZoneId zone, RandomGenerator random) {
        this.people = people;
        this.hours = hours;
        this.zone = zone;
        this.random = random;
    }

    /** The parties of a day, in the order in which they come. */
    List<Party> on(LocalDate day) {
        List<Open> open = CLOSED.contains(MonthDay.from(day)) ? List.of() : hours.on(day, zone);
        return open.isEmpty() ? List.of()
                : together(visits(day, open.get(0)), open.get(open.size() - 1).to().toEpochMilli());
    }

    private List<Visit> visits(LocalDate day, Open open) {
        List<Visit> visits = new ArrayList<>();
        for (Person each : people) {
            if (each.habit().comes(day, random)) {
                long wanted = day.atStartOfDay(zone).toInstant().toEpochMilli()
                        + each.habit().arrival(day, random) * MINUTE_MS;
                long from = Math.max(wanted, open.from().toEpochMilli() + random.nextInt(20) * MINUTE_MS);
                visits.add(new Visit(each, from, each.habit().stay(random)));
            }
        }
        visits.sort(Comparator.comparingLong(Visit::atMs));
        return visits;
    }

    /** Who comes at about the same time likes to play together. */
    private List<Party> together(List<Visit> visits, long closingMs) {
        List<Party> parties = new ArrayList<>();
        int next = 0;
        while (next < visits.size()) {
            Visit first = visits.get(next);
            List<Person> party = new ArrayList<>();
            int minutes = 0;
            do {
                party.add(visits.get(next).person());
                minutes += visits.get(next).minutes();
                next++;
            } while (next < visits.size() && party.size() < MOST_TOGETHER
                    && visits.get(next).atMs() - first.atMs() < WAIT_FOR_OTHERS_MS && random.nextInt(3) > 0);
            long until = Math.min(first.atMs() + minutes * MINUTE_MS, closingMs);
            parties.add(new Party(List.copyOf(party), first.atMs(), until));
        }
        return parties;
    }
}
