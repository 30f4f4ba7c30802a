package org.cupbeam.studio.insight.make;

import java.util.Arrays;

/**
 * What is held likely of a shape's parameters before a putt: the logarithm of each is normal.
 *
 * @param medians in the parameters' own units
 * @param logSds  standard deviations of the logarithms; infinite where anything is as likely, and the median but a start
 */
public record Prior(double[] medians, double[] logSds) {
    /**
     * Players of a studio, for {@link Shape#ONE_ANGLE}. The published tables give 1.5 degrees for the tour and some 2.4
     * for a golfer of 90 strokes; the middle, and wide enough for both and beyond.
     */
    public static final Prior ONE_ANGLE = new Prior(new double[] {Math.toRadians(2)}, new double[] {0.4});
    /**
     * Players of a studio, for {@link Shape#ANGLE_AND_DISTANCE}. Published: 1.0 degree and 6.5 to 8 % for the tour, 1.5
     * degrees and 8.5 % for amateurs (M. Bansal and M. Broadie, Winter Simulation Conference 2008, quoted second-hand).
     */
    public static final Prior ANGLE_AND_DISTANCE =
            new Prior(new double[] {Math.toRadians(1.4), 0.09}, new double[] {0.35, 0.35});

    /** Nothing held likely; a place to start from. */
    public static Prior none(double... start) {
        double[] anything = new double[start.length];
        Arrays.fill(anything, Double.POSITIVE_INFINITY);
        return new Prior(start, anything);
    }

    double[] start() {
        double[] logs = new double[medians.length];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = Math.log(medians[i]);
        }
        return logs;
    }

    double logDensity(double[] logs) {
        double sum = 0;
        for (int i = 0; i < medians.length; i++) {
            double off = (logs[i] - Math.log(medians[i])) / logSds[i];
            sum -= 0.5 * off * off;
        }
        return sum;
    }
}
