package org.cupbeam.studio.insight.make;

import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;
import org.cupbeam.studio.insight.chance.Bell;

/**
 * Holed if it starts out straight enough: the angle's error is normal, and the whole ball must pass over the hole
 * (A. Gelman and D. Nolan, A probability model for golf putting, Teaching Statistics 24, 2002).
 *
 * @param sigmaRad standard deviation of the angle, above 0
 * @param roomMm   how far off the hole's centre the ball's may pass
 */
public record OneAngle(double sigmaRad, double roomMm) implements MakeCurve {
    /** The hole's radius less the ball's. */
    public static final double ROOM_MM = Hole.RADIUS_MM - Ball.RADIUS_MM;

    public OneAngle(double sigmaRad) {
        this(sigmaRad, ROOM_MM);
    }

    @Override
    public double at(double distanceMm) {
        return distanceMm <= roomMm ? 1 : Bell.within(Math.asin(roomMm / distanceMm) / sigmaRad);
    }
}
