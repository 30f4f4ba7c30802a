package org.cupbeam.studio.league;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.cupbeam.studio.store.league.Played;

/**
 * What a week's runs come to, player by player.
 *
 * @param number    from 1
 * @param standings in order of players' numbers
 */
public record Week(int number, List<Standing> standings) {
    /** What one player's runs of a week come to. @param studios in which they were played */
    public record Standing(int player, Set<String> studios, Sum sum) {
    }

    public Week {
        standings = List.copyOf(standings);
    }

    /** @param best the best runs of each player in that week, so many as count; of other weeks none */
    public static Week of(int number, List<Played> best) {
        Map<Set<String>, Set<String>> alike = new HashMap<>(); // few differ, and many weeks are remembered
        return new Week(number, best.stream().collect(Collectors.groupingBy(Played::player, TreeMap::new, Collectors.toList())).entrySet().stream()
                .map(each -> new Standing(each.getKey(), alike.computeIfAbsent(each.getValue().stream().map(Played::studio)
                        .collect(Collectors.toUnmodifiableSet()), studios -> studios), Sum.of(each.getValue()))).toList());
    }
}
