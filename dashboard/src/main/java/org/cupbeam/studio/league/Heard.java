package org.cupbeam.studio.league;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.cupbeam.studio.store.league.LaneHeard;

/**
 * Which studios have been heard up to a moment, so that nothing of theirs from before it is still to come.
 *
 * <p>A studio is heard up to where each of its lanes in use is. A lane that nobody putts on says nothing, so one that was not in
 * use is not waited for, unless its studio has no other.
 *
 * @param studios that are waited for
 * @param behind  those of them of which something may be to come
 */
public record Heard(int studios, List<Behind> behind) {
    /** @param heardMs up to when it is heard, ms since 1970; 0 for never */
    public record Behind(String studio, long heardMs) {
    }

    public Heard {
        behind = List.copyOf(behind);
    }

    /**
     * @param chosen studios that are in it; empty for all that have a lane in use
     * @param upToMs the moment
     */
    public static Heard of(List<LaneHeard> lanes, Set<String> chosen, long upToMs) {
        Set<String> waitedFor = chosen.isEmpty() ? lanes.stream().filter(LaneHeard::inUse).map(LaneHeard::studio)
                .collect(Collectors.toCollection(TreeSet::new)) : new TreeSet<>(chosen);
        List<Behind> behind = new ArrayList<>();
        for (String studio : waitedFor) {
            long heardMs = heardMs(lanes.stream().filter(each -> each.studio().equals(studio)).toList());
            if (heardMs < upToMs) {
                behind.add(new Behind(studio, heardMs));
            }
        }
        return new Heard(waitedFor.size(), behind);
    }

    private static long heardMs(List<LaneHeard> ofOne) {
        return ofOne.stream().filter(LaneHeard::inUse).mapToLong(LaneHeard::heardMs).min()
                .orElse(ofOne.stream().mapToLong(LaneHeard::heardMs).max().orElse(0));
    }
}
