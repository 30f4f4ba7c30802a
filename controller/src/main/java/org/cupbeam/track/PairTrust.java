package org.cupbeam.track;

import org.cupbeam.track.PairGauge.Pass;

/**
 * Whether a pair of beams stands, and is plugged, as the rig file says, by what passes it.
 *
 * <p>Feet, putters and balls rolled back pass it too. But nearly every putt goes past a pair before the hole: where more balls
 * come back past it than go there, the two are swapped. Behind the hole nothing tells so: few putts come there, and somebody may
 * roll many back from there that were carried. And whatever passes at another distance than the rig file's
 * goes both ways, or is a ball now and then at the right one, unless the two stand wrong. No allocation.
 */
final class PairTrust {
    /** So many passers-by in a row that one beam alone saw. */
    private static final int MISSED = 5;
    /** So many more that came back than went, and what a lane is given for a beginning. */
    private static final int SWAPPED = -5;
    private static final int MOST = 3;
    private static final int PROVEN = 2;
    /** So many of the last passes at another distance, nearly all forward, agree. */
    private static final int ODD = 6;
    private static final int ODD_FORWARD = 5;
    private static final double AGREE_MM = 5;

    private final PairGauge gauge;
    private final boolean beforeHole;
    private final double[] oddMm = new double[ODD];
    private int odd;
    private int balance;
    private boolean proven;
    private boolean unsure;
    private double insteadMm = Double.NaN;

    PairTrust(PairGauge gauge, boolean beforeHole) {
        this.beforeHole = beforeHole;
        this.gauge = gauge;
    }

    /** Takes a pulse of the first beam (0) or of the second (1), and tells whether both have now been passed. */
    Pass pulse(int which, long onNs, long offNs, boolean otherSees) {
        Pass pass = gauge.pulse(which, onNs, offNs, otherSees);
        switch (pass) {
            case FORWARD -> went(1);
            case BACKWARD -> went(-1);
            case ODD -> odd();
            case NONE -> { }
        }
        return pass;
    }

    private void went(int by) {
        unsure = balance < 0 && !proven;
        balance = beforeHole ? Math.max(SWAPPED, Math.min(MOST, balance + by)) : 0;
        proven |= balance >= PROVEN;
        odd = 0;
        insteadMm = Double.NaN;
    }

    private void odd() {
        unsure = false;
        oddMm[odd++ % ODD] = gauge.passMm();
        if (odd < ODD) {
            return;
        }
        int forward = 0;
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        double sum = 0;
        for (double mm : oddMm) {
            if (mm > 0) {
                forward++;
                least = Math.min(least, mm);
                most = Math.max(most, mm);
                sum += mm;
            }
        }
        boolean agree = forward >= ODD_FORWARD && most - least <= AGREE_MM;
        insteadMm = agree ? sum / forward : insteadMm;
    }

    /** Whether the last pass, though it looks like a putt's, may be a ball's that was rolled back past swapped beams. */
    boolean isUnsure() {
        return unsure;
    }

    /** What is wrong with the first beam (0) or the second (1) by what passed both. */
    Doubt doubt(int which) {
        if (gauge.missed(which) >= MISSED) {
            return Doubt.SILENT;
        }
        if (balance <= SWAPPED) {
            return Doubt.SWAPPED;
        }
        return Double.isNaN(insteadMm) ? Doubt.NONE : Doubt.MISPLACED;
    }

    /** How far apart they truly stand, mm, where that is not what the rig file says; else NaN. */
    double insteadMm() {
        return insteadMm;
    }

    double apartMm() {
        return gauge.apartMm();
    }
}
