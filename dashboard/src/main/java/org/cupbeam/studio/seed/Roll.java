package org.cupbeam.studio.seed;

import java.util.random.RandomGenerator;
import org.cupbeam.event.Putt;
import org.cupbeam.green.Capture;
import org.cupbeam.green.Hole;
import org.cupbeam.green.Rolling;

/**
 * One putt, as it rolled.
 *
 * @param holed        it went in
 * @param paceMm       where it would have stopped along the line had there been no hole, past it positive
 * @param finishMm     where it did stop; of a holed one, no matter where
 * @param speedMmPerS  at the hole had there been none; NaN where it stopped before
 * @param rim          it touched the rim and stayed out
 */
record Roll(boolean holed, double paceMm, double finishMm, double speedMmPerS, boolean rim) {
    /** Where a lane's first beam stands. */
    static final double FIRST_BEAM_MM = -300;
    private static final double CAPTURE_SD = 0.04;
    private static final double GREEN_SD = 0.01;

    static Roll of(Stroke stroke, double stationMm, double decelerationMmPerS2, RandomGenerator random) {
        double meantMm = stationMm + stroke.aimPastMm();
        double lengthMm = random.nextDouble() < stroke.mishitShare() ? 2 * meantMm * random.nextDouble()
                : meantMm * (1 + stroke.paceSd() * random.nextGaussian());
        double paceMm = Math.max(lengthMm, 0) - stationMm;
        double offMm = Math.abs(stationMm * Math.tan(Math.toRadians(stroke.directionSdDeg() * random.nextGaussian())));
        double deceleration = decelerationMmPerS2 * (1 + GREEN_SD * random.nextGaussian());
        double limit = Capture.limitMmPerS(offMm) * (1 + CAPTURE_SD * random.nextGaussian());
        boolean over = offMm < Hole.RADIUS_MM && paceMm > -Math.sqrt(Hole.RADIUS_MM * Hole.RADIUS_MM - offMm * offMm);
        double speed = Rolling.speedToStopMmPerS(Math.max(0, paceMm), deceleration);
        boolean holed = over && speed <= limit;
        boolean rim = !holed && paceMm > 0 && offMm < Hole.RADIUS_MM;
        double finishMm = rim ? paceMm * random.nextDouble() : paceMm;
        return new Roll(holed, paceMm, finishMm, paceMm < 0 ? Double.NaN : speed, rim);
    }

    /**
     * What the sensors make of it.
     *
     * @param full the lane has a strike sensor, which counts putts that never reach a beam (elsewhere they have to be
     *             entered), and beams behind the hole, which tell when the rim was touched
     */
    Putt seen(boolean full, double limitMm, RandomGenerator random) {
        if (paceMm < FIRST_BEAM_MM) {
            return new Putt(Putt.Outcome.MISSED, Double.NaN, Double.NaN, Double.NaN, FIRST_BEAM_MM, false, Double.NaN,
                    Double.NaN, false, full ? Putt.How.SENSED : Putt.How.ENTERED);
        }
        double sdMm = tenths(4 + 0.004 * Math.abs(paceMm));
        double pace = tenths(paceMm + sdMm * random.nextGaussian());
        double speed = tenths(speedMmPerS * (1 + 0.004 * random.nextGaussian()));
        if (holed) {
            return new Putt(Putt.Outcome.HOLED, Double.NaN, Double.NaN, Double.NaN, Double.NaN, false, speed, pace,
                    false, Putt.How.SENSED);
        }
        double finish = rim ? tenths(finishMm + sdMm * random.nextGaussian()) : pace;
        return new Putt(Putt.Outcome.MISSED, finish, sdMm, tenths(finish - 1.96 * sdMm), tenths(finish + 1.96 * sdMm),
                finish > limitMm, speed, pace, rim && full, Putt.How.SENSED);
    }

    private static double tenths(double value) {
        return Double.isNaN(value) ? value : Math.round(10 * value) / 10.0;
    }
}
