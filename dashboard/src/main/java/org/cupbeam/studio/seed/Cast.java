package org.cupbeam.studio.seed;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.cupbeam.studio.seed.Truth.Course;
import org.cupbeam.studio.seed.Truth.Era;

/** The people of a studio, and what is planted in them. */
final class Cast {
    private static final int PLANTS = 12;
    private static final int MONTHS = 12;

    private final LocalDate first;
    private final LocalDate last;
    private final ZoneId zone;
    private final RandomGenerator random;

    /** @param first day of the year that is made up; the last one likewise */
    Cast(LocalDate first, LocalDate last, ZoneId zone, RandomGenerator random) {
        this.first = first;
        this.last = last;
        this.zone = zone;
        this.random = random;
    }

    List<Person> of(Size size) {
        List<String> names = Names.some(size.regulars() + size.casuals() + size.guests(), random);
        List<Person> people = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            boolean regular = i < size.regulars();
            boolean casual = !regular && i < size.regulars() + size.casuals();
            Truth truth = regular ? planted(names.get(i), i)
                    : new Truth(names.get(i), Course.STEADY, List.of(new Era(start(0), stroke())), List.of());
            Habit habit = regular ? habit(1.7 + 0.6 * random.nextDouble(), 50, first)
                    : casual ? habit(0.35 + 0.3 * random.nextDouble(), 45, day(0.4 * random.nextDouble()))
                    : guest();
            people.add(new Person(truth, habit, random.nextInt(9) == 0 ? "left" : "right",
                    random.nextInt(3) == 0 ? "feet" : "metric"));
        }
        return people;
    }

    /** One of each dozen of regulars has each of these; three have nothing. */
    private Truth planted(String name, int number) {
        Stroke stroke = stroke();
        boolean other = number / PLANTS % 2 == 1;
        return switch (number % PLANTS) {
            case 0 -> turning(name, stroke, stroke.direction(0.7));
            case 1 -> turning(name, stroke, stroke.direction(1.45));
            case 2 -> turning(name, stroke, stroke.pace(0.6));
            case 3 -> turning(name, stroke, stroke.direction(1.3).pace(1.35));
            case 4 -> weak(name, stroke, other ? Weakness.RIGHT_TO_LEFT : Weakness.LEFT_TO_RIGHT);
            case 5 -> weak(name, stroke, other ? Weakness.UPHILL : Weakness.DOWNHILL);
            case 6 -> drifting(name, stroke, other ? 1.35 : 0.7);
            case 7 -> weak(name, stroke, Weakness.LONG_PUTTS);
            case 8 -> weak(name, stroke, Weakness.SHORT_PUTTS);
            default -> new Truth(name, Course.STEADY, List.of(new Era(start(0), stroke)), List.of());
        };
    }

    private Truth turning(String name, Stroke before, Stroke after) {
        Instant turn = start(0.3 + 0.4 * random.nextDouble());
        return new Truth(name, Course.TURNS, List.of(new Era(start(0), before), new Era(turn, after)), List.of());
    }

    private Truth weak(String name, Stroke stroke, Weakness weakness) {
        return new Truth(name, Course.STEADY, List.of(new Era(start(0), stroke)), List.of(weakness));
    }

    private Truth drifting(String name, Stroke stroke, double times) {
        List<Era> eras = new ArrayList<>();
        for (int month = 0; month < MONTHS; month++) {
            double share = (double) month / (MONTHS - 1);
            eras.add(new Era(start((double) month / MONTHS), stroke.direction(1 + share * (times - 1))));
        }
        return new Truth(name, Course.DRIFTS, eras, List.of());
    }

    /** Good club players to beginners. */
    private Stroke stroke() {
        double better = random.nextGaussian();
        return new Stroke(1.5 * Math.exp(0.22 * better + 0.08 * random.nextGaussian()),
                Math.max(100, 280 + 60 * random.nextGaussian()),
                0.09 * Math.exp(0.22 * better + 0.08 * random.nextGaussian()), 0.004 + 0.012 * random.nextDouble());
    }

    private Habit habit(double visitsAWeek, int minutes, LocalDate from) {
        int[] times = {11 * 60, 13 * 60, 17 * 60, 18 * 60, 18 * 60 + 30, 19 * 60, 20 * 60};
        return new Habit(visitsAWeek, times[random.nextInt(times.length)], 0.6 + 1.4 * random.nextDouble(), minutes, from,
                last);
    }

    /** Somebody who comes for some weeks, and never again. */
    private Habit guest() {
        LocalDate from = day(0.9 * random.nextDouble());
        Habit habit = habit(0.6, 45, from);
        return new Habit(habit.visitsAWeek(), habit.minuteOfDay(), 2, habit.minutes(), from, from.plusDays(42));
    }

    private LocalDate day(double share) {
        return first.plusDays((long) (share * (last.toEpochDay() - first.toEpochDay())));
    }

    private Instant start(double share) {
        return day(share).atStartOfDay(zone).toInstant();
    }
}
