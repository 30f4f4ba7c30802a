package org.cupbeam.edge.practice;

import org.cupbeam.green.Ball;

/**
 * How a ball is set off: its speed and its direction to the left of the line.
 *
 * @param speedMmPerS speed off the putter, before it has stopped sliding
 * @param leftRad     direction, from the line to the left
 */
record Aim(double speedMmPerS, double leftRad) {
    private static final int SHOTS = 60;
    private static final double CLOSE_MM = 0.5;

    /**
     * What a player who knows this green would want: over the hole's centre, to stop so far past it. Found as a player
     * does, by trying: each shot's miss corrects the next.
     */
    static Aim at(Turf turf, double fromMm, double pastMm) {
        Aim aim = new Aim(1.4 * Math.sqrt(2 * turf.alongLine() * (fromMm + pastMm)), 0);
        for (int i = 0; i < SHOTS; i++) {
            Passage shot = Passage.of(turf, aim.start(fromMm));
            double length = shot.restMm() + fromMm;
            double wide = shot.reached() ? shot.sideMm() : 0;
            if (Math.abs(shot.restMm() - pastMm) < CLOSE_MM && Math.abs(wide) < CLOSE_MM) {
                return aim;
            }
            aim = new Aim(aim.speedMmPerS * Math.sqrt((fromMm + pastMm) / Math.max(1, length)),
                    aim.leftRad - wide / fromMm);
        }
        throw new IllegalStateException("no aim found from " + fromMm + " mm to " + pastMm + " mm past on " + turf);
    }

    /** A ball on the line, so far before the hole, as the putter leaves it: sliding, without spin. */
    Body start(double fromMm) {
        Body ball = new Body();
        ball.x = -fromMm;
        ball.z = Ball.RADIUS_MM;
        ball.vx = speedMmPerS * StrictMath.cos(leftRad);
        ball.vy = speedMmPerS * StrictMath.sin(leftRad);
        return ball;
    }
}
