package org.cupbeam.studio.insight.make;

import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;

/** A family of curves, told apart by a few positive parameters. */
public interface Shape {
    /** {@link OneAngle}: its angle in radians. */
    Shape ONE_ANGLE = oneAngle(Hole.RADIUS_MM - Ball.RADIUS_MM);
    /** {@link AngleAndDistance}: its angle in radians, and its share of the length. */
    Shape ANGLE_AND_DISTANCE = angleAndDistance(Hole.RADIUS_MM - Ball.RADIUS_MM);

    /** The curve with these parameters. */
    MakeCurve curve(double[] parameters);

    /** {@link OneAngle} with another room for the ball than this project's. */
    static Shape oneAngle(double roomMm) {
        return parameters -> new OneAngle(parameters[0], roomMm);
    }

    /** {@link AngleAndDistance} with another room for the ball than this project's. */
    static Shape angleAndDistance(double roomMm) {
        return parameters -> new AngleAndDistance(parameters[0], parameters[1], roomMm);
    }
}
