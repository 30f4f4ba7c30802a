package org.cupbeam.track;

import java.util.Arrays;

/**
 * The beams that one ball crossed, in order, with times in s since the first of them began.
 *
 * <p>A ball that stopped in a beam has no end there: NaN.
 */
final class Crossings {
    private final int[] beam;
    private final double[] onS;
    private final double[] offS;
    private long originNs;
    private int count;

    Crossings(int beams) {
        beam = new int[beams];
        onS = new double[beams];
        offS = new double[beams];
    }

    void begin(long timeNs) {
        originNs = timeNs;
        count = 0;
        Arrays.fill(offS, Double.NaN);
    }

    void add(int crossedBeam, double fromS, double toS) {
        beam[count] = crossedBeam;
        onS[count] = fromS;
        offS[count] = toS;
        count++;
    }

    void removeFrom(int index) {
        count = index;
    }

    int count() {
        return count;
    }

    int beam(int index) {
        return beam[index];
    }

    int lastBeam() {
        return beam[count - 1];
    }

    double onS(int index) {
        return onS[index];
    }

    double offS(int index) {
        return offS[index];
    }

    /** The last time at which the ball is known to have moved. */
    double lastS() {
        return Double.isNaN(offS[count - 1]) ? onS[count - 1] : offS[count - 1];
    }

    long originNs() {
        return originNs;
    }

    double seconds(long timeNs) {
        return (timeNs - originNs) * 1e-9;
    }

    long timeNs(double seconds) {
        return originNs + Math.round(seconds * 1e9);
    }
}
