package org.cupbeam.studio.insight.chance;

import org.apache.commons.numbers.gamma.Erf;
import org.apache.commons.numbers.gamma.Erfc;

/** The standard normal distribution. */
public final class Bell {
    private static final double ROOT_2 = Math.sqrt(2);
    private static final double PEAK = 1 / Math.sqrt(2 * Math.PI);

    private Bell() {
    }

    /** The chance of a value below this. */
    public static double below(double z) {
        return 0.5 * Erfc.value(-z / ROOT_2);
    }

    /** The chance of a value within ±z; z 0 or more. */
    public static double within(double z) {
        return Erf.value(z / ROOT_2);
    }

    /** The density. */
    public static double density(double z) {
        return PEAK * Math.exp(-0.5 * z * z);
    }
}
