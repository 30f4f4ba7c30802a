package org.cupbeam.studio.league;

import java.util.List;
import org.cupbeam.drill.Score;
import org.cupbeam.studio.store.league.Played;

/**
 * What some runs come to together.
 *
 * <p>Runs that cleared a station are added up: stations, putts, balls holed; the mean miss is the mean of theirs. Runs that cleared
 * none add nothing, so that nobody is ever worse off for having played; where there are no others, the sum is the best of them.
 *
 * @param runs   that are in it
 * @param missMm 0 where nothing was missed in any of them; infinite where a run's misses have no finish
 */
public record Sum(int runs, int cleared, int attempts, int holed, double missMm) implements Comparable<Sum> {

    /** @param runs at least one */
    static Sum of(List<Played> runs) {
        List<Played> adding = runs.stream().filter(each -> each.cleared() > 0).toList();
        return adding.isEmpty() ? runs.stream().map(each -> added(List.of(each))).min(Sum::compareTo).orElseThrow() : added(adding);
    }

    /** Misses from the nearest on, so that equal runs give an equal sum, in whichever order they come. */
    private static Sum added(List<Played> runs) {
        double missMm = runs.stream().mapToDouble(Sum::missMm).sorted().reduce(0, Double::sum) / runs.size();
        return new Sum(runs.size(), runs.stream().mapToInt(Played::cleared).sum(), runs.stream().mapToInt(Played::attempts).sum(),
                runs.stream().mapToInt(Played::holed).sum(), missMm);
    }

    private static double missMm(Played run) {
        return run.attempts() == run.holed() ? 0 : Double.isNaN(run.meanMissMm()) ? Double.POSITIVE_INFINITY : run.meanMissMm();
    }

    /** The better one first, by the drill's order of better; 0 where the two share a place. */
    @Override
    public int compareTo(Sum other) {
        return new Score(cleared, attempts, missMm).compareTo(new Score(other.cleared, other.attempts, other.missMm));
    }
}
