package org.cupbeam.studio.seed;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.random.RandomGenerator;

/**
 * When somebody comes, and for how long.
 *
 * @param visitsAWeek    on average over the year
 * @param minuteOfDay    at which they like to come on a weekday; at the weekend some hours earlier
 * @param weekendTimes   as likely on a day of the weekend as on another
 * @param minutes        that they stay
 * @param from           of the days of the year on which they come at all
 * @param until          likewise, the last
 */
record Habit(double visitsAWeek, int minuteOfDay, double weekendTimes, int minutes, LocalDate from, LocalDate until) {
    /** People putt indoors in the cold months. */
    private static final double[] MONTHS = {1.35, 1.3, 1.15, 0.95, 0.8, 0.7, 0.65, 0.6, 0.85, 1.1, 1.3, 1.25};
    private static final int WEEKEND_EARLIER_MIN = 240;

    boolean comes(LocalDate day, RandomGenerator random) {
        double perDay = visitsAWeek / (5 + 2 * weekendTimes);
        double chance = perDay * (weekend(day) ? weekendTimes : 1) * MONTHS[day.getMonthValue() - 1];
        return !day.isBefore(from) && !day.isAfter(until) && random.nextDouble() < chance;
    }

    /** The minute of the day at which they come. */
    int arrival(LocalDate day, RandomGenerator random) {
        return minuteOfDay - (weekend(day) ? WEEKEND_EARLIER_MIN : 0) + (int) (25 * random.nextGaussian());
    }

    int stay(RandomGenerator random) {
        return Math.max(10, (int) (minutes * (1 + 0.25 * random.nextGaussian())));
    }

    private static boolean weekend(LocalDate day) {
        return day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
    }
}
