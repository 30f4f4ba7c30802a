package org.cupbeam.green;

/** The hole (Rules of Golf, Definitions: 4¼ inches, there rounded to 108 mm; this project uses 108 mm). */
public final class Hole {
    /** Radius in mm. */
    public static final double RADIUS_MM = 54.0;

    private Hole() {
    }
}
