package org.cupbeam.studio.league;

import java.util.Collection;
import java.util.List;
import org.cupbeam.drill.Score;
import org.cupbeam.studio.store.league.Played;

/**
 * What some runs come to together.
 *
 * <p>Runs that cleared a station are added up: stations, putts, balls holed; the mean miss is the mean of theirs. Runs that cleared
 * none add nothing, so that nobody is ever worse off for having played; where there are no others, the sum is the best of them.
 *
 * @param runs     that are in it
 * @param missesUm the runs' mean misses added up, each in whole µm, so that equal runs give an equal sum in whichever order they
 *                 come; {@link #FARTHEST} where a run's misses have no finish
 */
public record Sum(int runs, int cleared, int attempts, int holed, long missesUm) implements Comparable<Sum> {
    private static final long FARTHEST = Long.MAX_VALUE;
    private static final double UM_PER_MM = 1_000;

    /** @param runs at least one */
    static Sum of(List<Played> runs) {
        return over(runs.stream().map(Sum::of).toList());
    }

    /** @param sums at least one, of other runs each */
    static Sum over(Collection<Sum> sums) {
        Sum added = null;
        Sum best = null;
        for (Sum each : sums) {
            if (each.cleared > 0) {
                added = added == null ? each : added.plus(each);
            } else if (best == null || each.compareTo(best) < 0) {
                best = each;
            }
        }
        return added == null ? best : added;
    }

    private static Sum of(Played run) {
        long missUm = run.attempts() == run.holed() ? 0 : Double.isNaN(run.meanMissMm()) ? FARTHEST : Math.round(run.meanMissMm() * UM_PER_MM);
        return new Sum(1, run.cleared(), run.attempts(), run.holed(), missUm);
    }

    private Sum plus(Sum other) {
        return new Sum(runs + other.runs, cleared + other.cleared, attempts + other.attempts, holed + other.holed,
                missesUm == FARTHEST || other.missesUm == FARTHEST ? FARTHEST : missesUm + other.missesUm);
    }

    /** The mean of the runs' mean misses; 0 where nothing was missed in any of them; infinite where a run's misses have no finish. */
    public double missMm() {
        return missesUm == FARTHEST ? Double.POSITIVE_INFINITY : missesUm / UM_PER_MM / runs;
    }

    /** The better one first, by the drill's order of better; 0 where the two share a place. */
    @Override
    public int compareTo(Sum other) {
        return new Score(cleared, attempts, missMm()).compareTo(new Score(other.cleared, other.attempts, other.missMm()));
    }
}
