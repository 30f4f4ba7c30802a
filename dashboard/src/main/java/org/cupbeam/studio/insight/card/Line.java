package org.cupbeam.studio.insight.card;

import org.cupbeam.green.Plane;

/**
 * The line of a putt on an even slope.
 *
 * @param stimpFt       the green's speed, as on a level green
 * @param uphillPercent rise per hundred along the line toward the hole, uphill positive
 * @param sidePercent   fall per hundred across it, falling to the left positive
 */
public record Line(double stimpFt, double uphillPercent, double sidePercent) {

    /** The steepest fall per hundred. */
    public double fallPercent() {
        return Math.hypot(uphillPercent, sidePercent);
    }

    Plane plane() {
        return Plane.of(stimpFt, fallPercent());
    }

    /** The line's direction from straight down the fall line (0) to straight up it (π), whichever side. */
    double headingRad() {
        return fallPercent() == 0 ? 0 : Math.atan2(Math.abs(sidePercent), -uphillPercent);
    }

    /** Whether balls turn to the left. */
    boolean turnsLeft() {
        return sidePercent > 0;
    }
}
