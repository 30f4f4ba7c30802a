package org.cupbeam.studio.sim;

import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/** All chance there is in a simulation, from one seed. */
final class Dice {
    private final SplittableRandom random;

    Dice(long seed) {
        this(new SplittableRandom(seed));
    }

    private Dice(SplittableRandom random) {
        this.random = random;
    }

    /** Others, so that one part's throws do not change another's. */
    Dice others() {
        return new Dice(random.split());
    }

    RandomGenerator generator() {
        return random.split();
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    /** Both ends included. */
    int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    /** From nothing to so long, small ones as often as large ones. */
    long upToNs(long most) {
        return most <= 0 ? 0 : (long) Math.exp(random.nextDouble() * Math.log(most));
    }

    /** Waits between things that happen on average so far apart, ns. */
    long aroundNs(long mean) {
        return (long) (-Math.log(1 - random.nextDouble()) * mean);
    }

    <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    void bytes(byte[] into) {
        random.nextBytes(into);
    }

    String hex(int digits) {
        StringBuilder hex = new StringBuilder();
        for (int i = 0; i < digits; i++) {
            hex.append(Character.forDigit(random.nextInt(16), 16));
        }
        return hex.toString();
    }
}
