package org.cupbeam.studio.insight.make;

import org.cupbeam.green.Capture;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.green.Hole;
import org.cupbeam.green.Rolling;
import org.cupbeam.studio.insight.chance.Bell;
import org.cupbeam.studio.insight.shot.Shot;

/** How much of the hole a ball of some pace can use. */
public final class Opening {
    private static final double ORDINARY_MM_PER_S2 = GreenSpeed.levelDecelerationMmPerS2(10);

    private Opening() {
    }

    /**
     * How far off the hole's centre a ball may come and still be kept.
     *
     * @param paceMm            where it would stop without a hole, past it positive
     * @param speedAtHoleMmPerS its speed at the hole's centre; of no matter where it does not get so far
     * @return in mm; 0 where it stops short of the hole's edge or comes too fast
     */
    public static double halfWidthMm(double paceMm, double speedAtHoleMmPerS) {
        if (paceMm >= 0) {
            return Capture.effectiveWidthMm(speedAtHoleMmPerS) / 2;
        }
        return Math.sqrt(Math.max(0, Hole.RADIUS_MM * Hole.RADIUS_MM - paceMm * paceMm));
    }

    /**
     * How far off the line a ball may start, in radians.
     *
     * @param distanceMm putted from
     */
    public static double halfAngleRad(double distanceMm, double halfWidthMm) {
        return Math.asin(Math.min(1, halfWidthMm / distanceMm));
    }

    /**
     * How far off the line a putt whose pace was measured might have started; 0 where the hole could not keep it.
     *
     * <p>A speed that was not measured is taken from the pace on an ordinary green: the width depends on it weakly.
     */
    public static double halfAngleRad(Shot shot) {
        double speed = shot.speedAtHoleMmPerS() >= 0 ? shot.speedAtHoleMmPerS()
                : Rolling.speedToStopMmPerS(Math.max(0, shot.paceMm()), ORDINARY_MM_PER_S2);
        return halfAngleRad(shot.distanceMm(), halfWidthMm(shot.paceMm(), speed));
    }

    /** The chance to start within that. */
    public static double chance(double halfAngleRad, double directionSdRad) {
        return Bell.within(halfAngleRad / directionSdRad);
    }
}
