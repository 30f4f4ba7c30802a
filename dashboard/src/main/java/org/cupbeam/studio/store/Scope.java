package org.cupbeam.studio.store;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.cupbeam.event.Topics;
import org.jdbi.v3.core.Handle;

/**
 * Which studios somebody looks after: all that there are, or those that are named. What belongs to others is not there for
 * them.
 *
 * @param isAll   then {@code studios} is empty
 * @param studios by name
 */
public record Scope(boolean isAll, Set<String> studios) {
    /** All that there are, and will be. */
    public static final Scope ALL = new Scope(true, Set.of());

    /** @throws IllegalArgumentException for a name that no studio can have */
    public Scope {
        studios = Set.copyOf(studios);
        studios.stream().filter(each -> !Topics.isName(each)).findFirst().ifPresent(each -> {
            throw new IllegalArgumentException("studio \"" + each + "\": a name has " + Topics.NAME_RULE);
        });
        if (isAll && !studios.isEmpty()) {
            throw new IllegalArgumentException("all studios, or some by name: not both");
        }
    }

    public static Scope of(Collection<String> studios) {
        return new Scope(false, Set.copyOf(studios));
    }

    /** What {@link #text} wrote. */
    public static Scope parse(String textOrNull) {
        return textOrNull == null ? ALL : of(Arrays.stream(textOrNull.split(" ")).filter(each -> !each.isEmpty()).toList());
    }

    /** Names with a blank between them, in order; null for all. */
    public String text() {
        return isAll ? null : String.join(" ", new TreeSet<>(studios));
    }

    public boolean includes(String studio) {
        return isAll || studios.contains(studio);
    }

    /** Whether it has everything that some named studios have; none named are all that there are. */
    public boolean includesAll(Set<String> named) {
        return isAll || !named.isEmpty() && studios.containsAll(named);
    }

    /** Whether it has all of another. */
    public boolean includes(Scope other) {
        return isAll || !other.isAll && studios.containsAll(other.studios);
    }

    /** The numbers of its lanes, in order. */
    public List<Integer> lanes(Handle h) {
        String which = isAll ? "" : " WHERE s.name IN (" + quoted() + ")";
        return h.createQuery("SELECT l.id FROM lane l JOIN studio s ON s.id = l.studio_id" + which + " ORDER BY l.id")
                .mapTo(Integer.class).list();
    }

    /** A condition in SQL: that a column's number is one of these. */
    static String in(String column, List<Integer> numbers) {
        return numbers.isEmpty() ? "1 = 0" : column + " IN ("
                + numbers.stream().map(String::valueOf).collect(Collectors.joining(", ")) + ")";
    }

    /** A condition in SQL: that a column's name of a studio is one of its. */
    public String named(String column) {
        return isAll ? "1 = 1" : studios.isEmpty() ? "1 = 0" : column + " IN (" + quoted() + ")";
    }

    /** None of the letters of a name means anything in SQL. */
    private String quoted() {
        return studios.isEmpty() ? "''" : studios.stream().sorted().collect(Collectors.joining("', '", "'", "'"));
    }
}
