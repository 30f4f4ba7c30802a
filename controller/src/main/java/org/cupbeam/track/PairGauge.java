package org.cupbeam.track;

/**
 * What two beams that stand close together make of the balls that pass both.
 *
 * <p>A ball is its own ruler: it blocks a beam for as long as it takes to roll its own chord, so its speed is known at both,
 * and the time between them tells how far apart they stand, and which it came to first. No allocation.
 */
final class PairGauge {
    /** Slower things are feet, faster ones putters. */
    private static final double SLOWEST_MM_PER_S = 250;
    private static final double FASTEST_MM_PER_S = 3500;
    private static final double FARTHEST_MM = 200;
    /** No green slows a ball by more, mm/s². */
    private static final double BRAKE_MM_PER_S2 = 1500;
    private static final double SPEED_SHARE = 0.05;
    /** Nearer than this to what the file says is a matter of fitting, which the estimator learns. */
    private static final double ASKEW_MM = 12;
    /** What a beam sees again within this is still the same passer-by. */
    private static final long SAME_NS = 700_000_000;
    private static final long LONG_AGO = Long.MIN_VALUE / 2;

    private final double apartMm;
    private final double[] chordMm;
    private final long[] middleNs = {LONG_AGO, LONG_AGO};
    private final double[] speed = new double[2];
    private final boolean[] waits = new boolean[2];
    private final int[] missed = new int[2];
    private double passMm;

    /** How something passed both beams. */
    enum Pass {
        /** It did not, as far as is known. */
        NONE,
        /** As a putt should. */
        FORWARD,
        /** At the right distance, the other way. */
        BACKWARD,
        /** Like a ball, but at another distance than the rig file's; or it was no ball. */
        ODD
    }

    /** Of two beams {@code apartMm} from each other, the nearer first, with the chords that a ball cuts of them. */
    PairGauge(double apartMm, double firstChordMm, double secondChordMm) {
        this.apartMm = apartMm;
        chordMm = new double[] {firstChordMm, secondChordMm};
    }

    /**
     * Takes a pulse of the first beam (0) or of the second (1), and tells whether both have now been passed.
     *
     * @param otherSees the other beam could have seen it too
     */
    Pass pulse(int which, long onNs, long offNs, boolean otherSees) {
        int other = 1 - which;
        missed[which] = 0;
        double v = chordMm[which] / ((offNs - onNs) * 1e-9);
        if (v < SLOWEST_MM_PER_S || v > FASTEST_MM_PER_S) {
            return Pass.NONE;
        }
        long middle = onNs + (offNs - onNs) / 2;
        if (otherSees && middle - middleNs[which] > SAME_NS) {
            missed[other]++;
        }
        middleNs[which] = middle;
        speed[which] = v;
        waits[which] = true;
        return waits[other] ? measured() : Pass.NONE;
    }

    private Pass measured() {
        double seconds = (middleNs[1] - middleNs[0]) * 1e-9;
        double mm = seconds * (speed[0] + speed[1]) / 2;
        double far = Math.abs(mm);
        double fastest = Math.max(speed[0], speed[1]);
        double change = Math.abs(speed[0] * speed[0] - speed[1] * speed[1]);
        if (far > FARTHEST_MM || change > 2 * BRAKE_MM_PER_S2 * far + 2 * SPEED_SHARE * fastest * fastest) {
            return Pass.NONE;
        }
        waits[0] = false;
        waits[1] = false;
        passMm = mm;
        if (Math.abs(far - apartMm) > ASKEW_MM) {
            return Pass.ODD;
        }
        return mm > 0 ? Pass.FORWARD : Pass.BACKWARD;
    }

    /** How far apart they are by the last that passed both, mm; negative if it came to the second first. */
    double passMm() {
        return passMm;
    }

    double apartMm() {
        return apartMm;
    }

    /** How many passers-by in a row the other saw, and this one (0 or 1) nothing of. */
    int missed(int which) {
        return missed[which];
    }
}
