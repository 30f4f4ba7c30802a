package org.cupbeam.drill;

import java.util.Comparator;

/**
 * A run's score. The better of two comes first: more stations cleared, then fewer attempts, then misses that finished
 * nearer to the hole.
 *
 * @param cleared      stations, the furthest reached counting
 * @param attempts     used
 * @param meanFinishMm mean distance of the misses' finishes; 0 without a miss, infinite where none has a finish
 */
public record Score(int cleared, int attempts, double meanFinishMm) implements Comparable<Score> {
    private static final Comparator<Score> BETTER_FIRST = Comparator.comparingInt(Score::cleared).reversed()
            .thenComparingInt(Score::attempts)
            .thenComparingDouble(Score::meanFinishMm);

    /** Negative where this is the better one; 0 where the two are equal in all three. */
    @Override
    public int compareTo(Score other) {
        return BETTER_FIRST.compare(this, other);
    }
}
