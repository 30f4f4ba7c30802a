package org.cupbeam.green;

/** The golf ball, at the smallest diameter the Rules of Golf allow (Equipment Rules: not less than 42.67 mm). */
public final class Ball {
    /** Radius in mm. */
    public static final double RADIUS_MM = 21.335;
    /** Diameter in mm. */
    public static final double DIAMETER_MM = 2 * RADIUS_MM;

    private Ball() {
    }
}
