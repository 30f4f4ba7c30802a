package org.cupbeam.studio.insight.make;

import java.util.function.DoubleUnaryOperator;
import org.cupbeam.green.Capture;
import org.cupbeam.green.Hole;
import org.cupbeam.studio.insight.chance.Bell;

/**
 * A stroke as two errors that have nothing to do with each other, and what follows for the make rate: the ball's start is
 * normal about the line, its roll normal about the length meant, and the hole keeps it by how fast it comes.
 *
 * @param directionSdRad      standard deviation of the start's direction
 * @param aimPastMm           how far past the hole the ball is meant to stop
 * @param paceSd              standard deviation of the length of the roll, as a share of it
 * @param mishitShare         share of putts whose length has nothing to do with what was meant
 * @param decelerationMmPerS2 of a ball that rolls along the line
 */
public record Stroke(double directionSdRad, double aimPastMm, double paceSd, double mishitShare,
                     double decelerationMmPerS2) implements MakeCurve {
    /** Gauss and Legendre's rule of ten points: halves of the nodes and weights on -1 to 1. */
    private static final double[] NODES = {0.14887433898163122, 0.4333953941292472, 0.6794095682990244,
            0.8650633666889845, 0.9739065285171717};
    private static final double[] WEIGHTS = {0.29552422471475287, 0.26926671930999635, 0.21908636251598204,
            0.1494513491505806, 0.06667134430868814};
    private static final double SDS_OUT = 5;

    @Override
    public double at(double distanceMm) {
        return holed(distanceMm, -Hole.RADIUS_MM);
    }

    /**
     * The chance to miss and run past the limit.
     *
     * @param limitMm past the hole, 0 or more
     */
    public double overshot(double distanceMm, double limitMm) {
        double meantMm = distanceMm + aimPastMm;
        double past = Bell.below((meantMm - distanceMm - limitMm) / (paceSd * meantMm));
        return Math.max(0, (1 - mishitShare) * past
                + mishitShare * PaceFit.mishitBeyond((distanceMm + limitMm) / meantMm) - holed(distanceMm, limitMm));
    }

    /**
     * The chance to need three putts or more: to miss, and to miss again from where the first came to rest.
     *
     * @param second the make rate of the second putt
     */
    public double threePutts(double distanceMm, MakeCurve second) {
        double sdMm = paceSd * (distanceMm + aimPastMm);
        double low = Math.max(-distanceMm, aimPastMm - SDS_OUT * sdMm);
        double high = aimPastMm + SDS_OUT * sdMm;
        double middle = Math.min(high, Math.max(low, 0));
        DoubleUnaryOperator missesTwice = paceMm -> {
            double leftMm = Math.hypot(paceMm, directionSdRad * (distanceMm + paceMm));
            return Bell.density((paceMm - aimPastMm) / sdMm) / sdMm * (1 - kept(distanceMm, paceMm))
                    * (1 - second.at(Math.max(1, leftMm)));
        };
        double mishit = 1 - second.at(distanceMm / 2);
        return (1 - mishitShare) * (integral(low, middle, missesTwice) + integral(middle, high, missesTwice))
                + mishitShare * mishit;
    }

    /** The chance to be holed with a pace of this or more. */
    private double holed(double distanceMm, double fromPaceMm) {
        double sdMm = paceSd * (distanceMm + aimPastMm);
        double low = Math.max(fromPaceMm, aimPastMm - SDS_OUT * sdMm);
        double high = Math.min(fastestPaceMm(), aimPastMm + SDS_OUT * sdMm);
        double struck = integral(low, high, paceMm ->
                Bell.density((paceMm - aimPastMm) / sdMm) / sdMm * kept(distanceMm, paceMm));
        double longestMm = PaceFit.MISHIT_UP_TO * (distanceMm + aimPastMm);
        double mishit = integral(fromPaceMm, Math.min(fastestPaceMm(), longestMm - distanceMm),
                paceMm -> kept(distanceMm, paceMm) / longestMm);
        return Math.min(1, (1 - mishitShare) * struck + mishitShare * mishit);
    }

    private double kept(double distanceMm, double paceMm) {
        double speed = Math.sqrt(2 * decelerationMmPerS2 * Math.max(0, paceMm));
        return Opening.chance(Opening.halfAngleRad(distanceMm, Opening.halfWidthMm(paceMm, speed)), directionSdRad);
    }

    private static double integral(double low, double high, DoubleUnaryOperator density) {
        if (high <= low) {
            return 0;
        }
        double middle = (low + high) / 2;
        double half = (high - low) / 2;
        double sum = 0;
        for (int i = 0; i < NODES.length; i++) {
            sum += WEIGHTS[i] * (density.applyAsDouble(middle - half * NODES[i])
                    + density.applyAsDouble(middle + half * NODES[i]));
        }
        return half * sum;
    }

    private double fastestPaceMm() {
        double limit = Capture.CENTRAL_LIMIT_MM_PER_S;
        return limit * limit / (2 * decelerationMmPerS2);
    }
}
