package org.cupbeam.track;

import java.util.Arrays;
import org.cupbeam.green.Rolling;

/**
 * What is known of one ball's motion along the line: x(τ) = x + v·τ − a·τ²/2, with covariance, τ in s since a time of
 * the caller's. The model is linear in its three unknowns, so each observation is one exact Kalman update.
 *
 * <p>Used to tell which crossings are one ball's. Beams may stand a little off and receivers differ, so its errors are
 * taken wide; the finish is estimated anew, and closer, by {@link FinishEstimator}.
 */
final class Roll {
    /** A beam may stand this far from where the rig file says, mm (standard deviation). */
    static final double BEAM_SD_MM = 1.5;
    /** Error of one edge's time, s: noise, and the difference between a receiver's two delays. */
    static final double EDGE_SD_S = 120e-6;
    /** What is left of a chord's length in error: height of the beam, its width. */
    static final double CHORD_SD_MM = 0.25;

    private double x;
    private double v;
    private double a;
    private final double[] p = new double[9];
    private final double[] h = new double[3];
    private final double[] ph = new double[3];

    /** Forgets all but the deceleration expected. */
    void reset(double decelerationMmPerS2, double decelerationSd) {
        x = 0;
        v = 1000;
        a = decelerationMmPerS2;
        Arrays.fill(p, 0);
        p[0] = 1e7;
        p[4] = 4e6;
        p[8] = decelerationSd * decelerationSd;
    }

    void copyFrom(Roll other) {
        x = other.x;
        v = other.v;
        a = other.a;
        System.arraycopy(other.p, 0, p, 0, 9);
    }

    /**
     * A whole crossing of a beam: two observations, the chord rolled while it was blocked, and where its middle was.
     *
     * @return how badly it fits what was known before: chi-square of two degrees of freedom
     */
    double cross(double onS, double offS, double positionMm, double halfChordMm) {
        double speed = 2 * halfChordMm / (offS - onS);
        double edge = speed * EDGE_SD_S;
        h[0] = 0;
        h[1] = offS - onS;
        h[2] = -(offS * offS - onS * onS) / 2;
        double misfit = update(2 * halfChordMm, CHORD_SD_MM * CHORD_SD_MM + 2 * edge * edge);
        h[0] = 1;
        h[1] = (onS + offS) / 2;
        h[2] = -(onS * onS + offS * offS) / 4;
        return misfit + update(positionMm, BEAM_SD_MM * BEAM_SD_MM + edge * edge / 2);
    }

    /** A ball's leading limb at a beam that it did not leave again; chi-square of one degree of freedom. */
    double arrive(double onS, double positionMm, double halfChordMm) {
        double edge = Math.max(0, v - a * onS) * EDGE_SD_S;
        h[0] = 1;
        h[1] = onS;
        h[2] = -onS * onS / 2;
        return update(positionMm - halfChordMm, BEAM_SD_MM * BEAM_SD_MM + edge * edge);
    }

    private double update(double observed, double variance) {
        double s = variance;
        for (int i = 0; i < 3; i++) {
            ph[i] = p[3 * i] * h[0] + p[3 * i + 1] * h[1] + p[3 * i + 2] * h[2];
        }
        s += h[0] * ph[0] + h[1] * ph[1] + h[2] * ph[2];
        double innovation = observed - (h[0] * x + h[1] * v + h[2] * a);
        double gain = innovation / s;
        x += ph[0] * gain;
        v += ph[1] * gain;
        a += ph[2] * gain;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                p[3 * i + j] -= ph[i] * ph[j] / s;
            }
        }
        return innovation * gain;
    }

    /** When it is at a place, s; NaN if it stops short of it. */
    double timeAtS(double positionMm) {
        double root = v * v - 2 * a * (positionMm - x);
        return root < 0 ? Double.NaN : 2 * (positionMm - x) / (v + Math.sqrt(root));
    }

    /** Its speed at a place, mm/s; NaN if it stops short of it. */
    double speedAtMmPerS(double positionMm) {
        return Rolling.speedAfterMmPerS(v, a, positionMm - x);
    }

    /** Its speed at a time, mm/s. */
    double speedMmPerS(double timeS) {
        return v - a * timeS;
    }

    double positionMm(double timeS) {
        return x + (v - a * timeS / 2) * timeS;
    }

    /** When it stops, s. */
    double stopS() {
        return Rolling.stopTimeS(v, a);
    }

    /** Where it stops, mm. */
    double finishMm() {
        return x + Rolling.stopDistanceMm(v, a);
    }

    /** Standard deviation of the finish, mm. */
    double finishSdMm() {
        double gv = v / a;
        double ga = -gv * gv / 2;
        double variance = p[0] + gv * gv * p[4] + ga * ga * p[8] + 2 * (gv * p[1] + ga * p[2] + gv * ga * p[5]);
        return Math.sqrt(Math.max(0, variance));
    }
}
