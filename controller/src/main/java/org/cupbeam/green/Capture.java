package org.cupbeam.green;

/**
 * Whether a hole keeps a ball that comes to it.
 *
 * <p>A ball off-centre by δ passes the hole's centre at that distance; R is the hole's radius, r the ball's. Sources:
 * B. W. Holmes, Am. J. Phys. 59, 129 (1991), and A. R. Penner, Can. J. Phys. 80, 83 (2002), his equations 23 and 30.
 */
public final class Capture {
    /** The highest speed at which the hole keeps a ball, dead centre: Holmes's 1.626 m/s, as Penner rounds it. */
    public static final double CENTRAL_LIMIT_MM_PER_S = 1630;

    private Capture() {
    }

    /**
     * The highest speed at which a ball drops below the far rim before it gets there, touching nothing:
     * [√(R²−δ²) + √((R−r)²−δ²)] √(g/2r).
     *
     * @param offCentreMm either side
     * @return in mm/s; 0 where the ball is too far off the centre to fall free
     */
    public static double freeFallLimitMmPerS(double offCentreMm) {
        double inside = Hole.RADIUS_MM - Ball.RADIUS_MM;
        if (Math.abs(offCentreMm) > inside) {
            return 0;
        }
        double flightMm = halfChordMm(Hole.RADIUS_MM, offCentreMm) + halfChordMm(inside, offCentreMm);
        return flightMm * Math.sqrt(Slope.GRAVITY_MM_PER_S2 / Ball.DIAMETER_MM);
    }

    /**
     * The highest speed at which the hole keeps the ball on the level, by whatever way it falls in:
     * 1.63 m/s · (1 − (δ/R)²).
     *
     * @param offCentreMm either side
     * @return in mm/s; 0 from the hole's edge outward
     */
    public static double limitMmPerS(double offCentreMm) {
        double share = offCentreMm / Hole.RADIUS_MM;
        return Math.max(0, CENTRAL_LIMIT_MM_PER_S * (1 - share * share));
    }

    /**
     * By what a slope multiplies {@link #limitMmPerS}: uphill, the far rim stands higher and the hole keeps more.
     *
     * @param gradePercent rise per hundred of the plane, positive
     * @param offUphillRad the ball's direction at the hole, from straight uphill (0) to straight downhill (π)
     */
    public static double slopeFactor(double gradePercent, double offUphillRad) {
        return 1 / Math.sqrt(1 - Math.cos(offUphillRad) * Math.sin(Slope.angleRad(gradePercent)));
    }

    /**
     * How wide the hole is to a ball of this speed on the level: twice the greatest off-centre at which it is kept.
     *
     * @return in mm; from the hole's diameter at no speed to 0 at {@link #CENTRAL_LIMIT_MM_PER_S} and above
     */
    public static double effectiveWidthMm(double speedMmPerS) {
        return 2 * Hole.RADIUS_MM * Math.sqrt(Math.max(0, 1 - speedMmPerS / CENTRAL_LIMIT_MM_PER_S));
    }

    private static double halfChordMm(double radiusMm, double offCentreMm) {
        return Math.sqrt(radiusMm * radiusMm - offCentreMm * offCentreMm);
    }
}
