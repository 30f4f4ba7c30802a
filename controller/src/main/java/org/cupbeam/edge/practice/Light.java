package org.cupbeam.edge.practice;

import org.cupbeam.green.Ball;

/** Light that a ball may block. */
sealed interface Light {
    /** Whether a ball blocks it whose centre is there: along the line, and above the surface. */
    boolean blockedAt(double x, double z);

    /** A beam across the line, where it truly stands: a ball blocks it with its section at the beam's height. */
    record Beam(double positionMm, double heightMm) implements Light {
        @Override
        public boolean blockedAt(double x, double z) {
            double along = x - positionMm;
            double up = z - heightMm;
            return along * along + up * up < Ball.RADIUS_MM * Ball.RADIUS_MM;
        }
    }

    /** A curtain across the cup, this high above the surface (below it: negative). */
    record Curtain(double heightMm) implements Light {
        @Override
        public boolean blockedAt(double x, double z) {
            return Math.abs(z - heightMm) < Ball.RADIUS_MM;
        }
    }
}
