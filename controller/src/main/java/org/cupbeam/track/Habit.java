package org.cupbeam.track;

/**
 * What is usual here of a positive quantity: how likely a value is, from those seen lately and a broad guess before
 * there were any. A kernel density in the logarithm.
 */
final class Habit {
    private static final int MEMORY = 64;
    /** As many values as the guess is worth. */
    private static final double GUESS = 3;

    private final double guessMean;
    private final double guessSd;
    private final double width;
    private final double[] seen = new double[MEMORY];
    private int count;

    /**
     * @param guess   a usual value
     * @param guessSd by what factor, in natural logarithm, it may be off
     * @param width   by what fraction two values of the same habit differ
     */
    Habit(double guess, double guessSd, double width) {
        guessMean = Math.log(guess);
        this.guessSd = guessSd;
        this.width = width;
    }

    void saw(double value) {
        seen[count++ % MEMORY] = Math.log(value);
    }

    /** Density at a value, in no unit: to compare with others of the same habit. */
    double likelihood(double value) {
        double log = Math.log(value);
        double sum = GUESS * kernel(log - guessMean, guessSd);
        for (int i = 0; i < Math.min(count, MEMORY); i++) {
            sum += kernel(log - seen[i], width);
        }
        return sum;
    }

    private static double kernel(double off, double sd) {
        double z = off / sd;
        return Math.exp(-z * z / 2) / sd;
    }
}
