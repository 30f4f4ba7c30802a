package org.cupbeam.edge.practice;

/**
 * A ball's state: where its centre is, how it moves, how it spins. Lengths in mm, speeds in mm/s.
 *
 * <p>Axes: x along the line, past the hole positive; y to the left of it; z up from the surface; the hole's centre is
 * the origin. The spin is given as the speed at the ball's skin (radius times angular velocity), so that a ball that
 * rolls has {@code wy = vx} and {@code wx = -vy}. Mutable, and written in place: a ball takes thousands of steps.
 */
final class Body {
    double x;
    double y;
    double z;
    double vx;
    double vy;
    double vz;
    double wx;
    double wy;
    double wz;

    void set(Body other) {
        x = other.x;
        y = other.y;
        z = other.z;
        vx = other.vx;
        vy = other.vy;
        vz = other.vz;
        wx = other.wx;
        wy = other.wy;
        wz = other.wz;
    }

    double speed() {
        return Math.sqrt(vx * vx + vy * vy + vz * vz);
    }

    /** How far the centre is from the hole's axis. */
    double fromHole() {
        return Math.sqrt(x * x + y * y);
    }

    /** Sets the spin of a ball that rolls as it moves. */
    void rollAlong() {
        wx = -vy;
        wy = vx;
        wz = 0;
    }
}
