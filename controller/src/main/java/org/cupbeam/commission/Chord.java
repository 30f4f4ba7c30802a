package org.cupbeam.commission;

import org.cupbeam.green.Ball;

/**
 * How much of a ball's way a beam at some height sees: 2√(r² − u²), u above the ball's middle. With the height known to
 * ± s only, its mean is shorter by r²s²/(r²−u²)^1.5, and it scatters (second order in s).
 *
 * @param mm   the mean
 * @param sdMm its standard deviation
 */
record Chord(double mm, double sdMm) {
    /** Nobody measures a beam's height over turf any better. */
    static final double HEIGHT_SD_MM = 1;

    static Chord at(double heightMm) {
        double up = heightMm - Ball.RADIUS_MM;
        return of(Math.sqrt(Ball.RADIUS_MM * Ball.RADIUS_MM - up * up), Math.abs(up));
    }

    /** Of a beam that is said to see so much, above 0. */
    static Chord seeing(double mm) {
        double half = Math.min(mm / 2, Ball.RADIUS_MM);
        return of(half, Math.sqrt(Ball.RADIUS_MM * Ball.RADIUS_MM - half * half));
    }

    private static Chord of(double half, double up) {
        double r2 = Ball.RADIUS_MM * Ball.RADIUS_MM;
        double slope = 2 * up / half;
        double bend = r2 / (half * half * half);
        double variance = HEIGHT_SD_MM * HEIGHT_SD_MM;
        return new Chord(2 * half - bend * variance,
                Math.sqrt(slope * slope * variance + 2 * bend * bend * variance * variance));
    }
}
