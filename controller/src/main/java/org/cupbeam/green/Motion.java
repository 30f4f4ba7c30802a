package org.cupbeam.green;

/**
 * A rolling ball's velocity on a plane.
 *
 * @param speedMmPerS 0 or more
 * @param headingRad  from straight down the fall line (0) to straight up it (π); negative to the other side
 */
public record Motion(double speedMmPerS, double headingRad) {
}
