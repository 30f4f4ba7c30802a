package org.cupbeam.studio.store.league;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Set;
import java.util.TreeSet;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.store.Texts;

/**
 * What is agreed on in a league.
 *
 * @param drill    what is played; its rules count, and not what it is called
 * @param tags     of the runs that count; what is null there may be anything
 * @param zone     by whose clock weeks begin, at each studio
 * @param firstDay a Monday
 * @param weeks    1 to {@link #MOST_WEEKS}
 * @param runs     that count of each player in each week, 1 to {@link #MOST_RUNS}
 * @param studios  names; empty for all, also those that come later
 */
public record League(String name, Drill drill, Tags tags, ZoneId zone, LocalDate firstDay, int weeks, int runs,
                     Set<String> studios) {
    /** The longest, in weeks: half a year. */
    public static final int MOST_WEEKS = 26;
    /** The most runs of a week. */
    public static final int MOST_RUNS = 10;
    private static final int LONGEST_NAME = 80;

    /** @throws IllegalArgumentException with what is wrong and what would do */
    public League {
        name = Texts.line("name", name, LONGEST_NAME);
        studios = Set.copyOf(studios);
        require(firstDay.getDayOfWeek() == DayOfWeek.MONDAY && firstDay.getYear() >= 1970 && firstDay.getYear() <= 9000,
                "first week: give a Monday between 1970 and 9000");
        require(weeks >= 1 && weeks <= MOST_WEEKS, "weeks: are " + weeks + "; give a last week that makes it 1 to " + MOST_WEEKS);
        require(runs >= 1 && runs <= MOST_RUNS, "runs a week: are " + runs + "; give 1 to " + MOST_RUNS);
    }

    /** The same under another name, with another number of weeks. */
    League become(String otherName, int otherWeeks) {
        return new League(otherName, drill, tags, zone, firstDay, otherWeeks, runs, studios);
    }

    /** Whether it is for every studio. */
    public boolean everywhere() {
        return studios.isEmpty();
    }

    /** In order. */
    public Set<String> inOrder() {
        return new TreeSet<>(studios);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
