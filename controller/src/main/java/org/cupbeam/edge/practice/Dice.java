package org.cupbeam.edge.practice;

import java.util.List;
import java.util.SplittableRandom;

/** Chance, in the words that the rest of the simulation uses. Same seed, same throws. */
final class Dice {
    private static final double NS_PER_S = 1e9;

    private final SplittableRandom random;

    Dice(long seed) {
        this(new SplittableRandom(seed));
    }

    private Dice(SplittableRandom random) {
        this.random = random;
    }

    /** Dice of its own for a part, so that one part's throws change no other's. */
    Dice split() {
        return new Dice(random.split());
    }

    boolean chance(double share) {
        return random.nextDouble() < share;
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** A whole number, both ends included. */
    int number(int low, int high) {
        return random.nextInt(low, high + 1);
    }

    double normal() {
        return random.nextGaussian();
    }

    /** Waiting time for something that happens this often, s. */
    double wait(double perSecond) {
        return -StrictMath.log(1 - random.nextDouble()) / perSecond;
    }

    /** A time between two numbers of seconds, in ns. */
    long ns(double lowS, double highS) {
        return Math.round(between(lowS, highS) * NS_PER_S);
    }

    int sign() {
        return random.nextBoolean() ? 1 : -1;
    }

    <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
