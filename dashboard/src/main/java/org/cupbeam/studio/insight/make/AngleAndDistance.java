package org.cupbeam.studio.insight.make;

import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;
import org.cupbeam.studio.insight.chance.Bell;
import org.cupbeam.studio.insight.words.Units;

/**
 * Holed if it starts out straight enough and is struck neither too softly nor too hard: aimed one foot past the hole,
 * with an error of the length in proportion to it, kept between the hole and three feet past (A. Gelman, Model building
 * and expansion for golf putting, Stan case study, 2019).
 *
 * @param sigmaAngleRad standard deviation of the angle, above 0
 * @param sigmaDistance standard deviation of the length, as a share of it, above 0
 * @param roomMm        how far off the hole's centre the ball's may pass
 */
public record AngleAndDistance(double sigmaAngleRad, double sigmaDistance, double roomMm) implements MakeCurve {
    private static final double AIMED_PAST_MM = Units.MM_PER_FT;
    private static final double KEPT_TO_MM = 3 * Units.MM_PER_FT;

    public AngleAndDistance(double sigmaAngleRad, double sigmaDistance) {
        this(sigmaAngleRad, sigmaDistance, Hole.RADIUS_MM - Ball.RADIUS_MM);
    }

    @Override
    public double at(double distanceMm) {
        double lengthSdMm = (distanceMm + AIMED_PAST_MM) * sigmaDistance;
        return new OneAngle(sigmaAngleRad, roomMm).at(distanceMm)
                * (Bell.below((KEPT_TO_MM - AIMED_PAST_MM) / lengthSdMm) - Bell.below(-AIMED_PAST_MM / lengthSdMm));
    }
}
