package org.cupbeam.edge.practice;

import org.cupbeam.green.Ball;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.green.Slope;

/**
 * The surface, a plane: how it slows a ball that rolls or slides, and which way gravity pulls along it. Accelerations
 * in mm/s².
 *
 * @param drag  what slows a ball that rolls, opposite to its motion
 * @param slide what slows a ball that slides, opposite to its slip
 * @param pullX gravity's component along the line
 * @param pullY gravity's component to the left
 * @param down  gravity's component into the plane
 */
record Turf(double drag, double slide, double pullX, double pullY, double down) {
    private static final double GRAVITY = Slope.GRAVITY_MM_PER_S2;
    private static final double RELEASE = GreenSpeed.RELEASE_MM_PER_S;
    private static final double MM_PER_FT = 304.8;
    /** A solid sphere's moment of inertia over m·r² is 2/5; so 5/7 of a force along the surface moves it when it rolls. */
    private static final double ROLLING_SHARE = 5.0 / 7.0;
    private static final double SPIN_GAIN = 2.5;
    private static final double SLIP_LOSS = 1 + SPIN_GAIN;

    private static final double LONGEST_STEP_S = 5e-3;
    private static final double LONGEST_STEP_MM = 8;
    /** Slower than this (mm/s) is at rest: what is left to roll is less than a micrometre. */
    static final double STILL = 0.3;
    /** Slower than this (mm/s) the skin does not slip. */
    private static final double NO_SLIP = 0.01;

    /**
     * A plane green.
     *
     * @param stimpFt         its speed, ft, as on a level green
     * @param uphillPercent   slope along the line, uphill positive
     * @param sidePercent     slope across it, falling to the left positive
     * @param slidingFriction coefficient of friction of a ball that slides
     */
    static Turf of(double stimpFt, double uphillPercent, double sidePercent, double slidingFriction) {
        double riseX = uphillPercent / 100;
        double riseY = -sidePercent / 100;
        double cosine = 1 / Math.sqrt(1 + riseX * riseX + riseY * riseY);
        double down = GRAVITY * cosine;
        double drag = RELEASE * RELEASE / (2 * stimpFt * MM_PER_FT) * cosine;
        Turf turf = new Turf(drag, slidingFriction * down, -down * riseX, -down * riseY, down);
        if (!(ROLLING_SHARE * turf.pull() < 0.98 * drag)) {
            throw new IllegalArgumentException("on a green of " + stimpFt + " ft a slope of " + uphillPercent
                    + " % along and " + sidePercent + " % across stops no ball: make it flatter or slower");
        }
        return turf;
    }

    private double pull() {
        return length(pullX, pullY);
    }

    /** Not {@link Math#hypot}, which guards against overflow and takes ten times as long. */
    private static double length(double x, double y) {
        return Math.sqrt(x * x + y * y);
    }

    /** What slows a ball that rolls straight along the line toward the hole. */
    double alongLine() {
        return drag - ROLLING_SHARE * pullX;
    }

    /**
     * Moves a ball that lies on the turf on by one step.
     *
     * @param longestMm the step may be no longer than this
     * @return the step's duration in s; 0 when the ball is at rest
     */
    double step(Body ball, double longestMm) {
        double speed = length(ball.vx, ball.vy);
        double slipX = ball.vx - ball.wy;
        double slipY = ball.vy + ball.wx;
        double slip = length(slipX, slipY);
        double longest = Math.min(LONGEST_STEP_S, Math.min(longestMm, LONGEST_STEP_MM) / Math.max(speed, STILL));
        if (slip > NO_SLIP) {
            return slide(ball, slipX / slip, slipY / slip, Math.min(longest, slip / (SLIP_LOSS * slide)));
        }
        if (speed < STILL) {
            return 0;
        }
        double h = Math.min(longest, 0.1 * speed / (drag + pull()));
        roll(ball, h);
        return h;
    }

    /** The skin slips over the turf, whose friction slows the ball and spins it up until it rolls. */
    private double slide(Body ball, double toX, double toY, double h) {
        double ax = pullX - slide * toX;
        double ay = pullY - slide * toY;
        ball.x += h * (ball.vx + h * ax / 2);
        ball.y += h * (ball.vy + h * ay / 2);
        ball.vx += h * ax;
        ball.vy += h * ay;
        ball.wx -= h * SPIN_GAIN * slide * toY;
        ball.wy += h * SPIN_GAIN * slide * toX;
        ball.z = Ball.RADIUS_MM;
        ball.vz = 0;
        return h;
    }

    /** Fourth-order Runge–Kutta: drag against the motion, wherever that points just then, and the pull of the slope. */
    private void roll(Body ball, double h) {
        double gx = ROLLING_SHARE * pullX;
        double gy = ROLLING_SHARE * pullY;
        double ux = ball.vx;
        double uy = ball.vy;
        double k = drag / length(ux, uy);
        double ax1 = gx - k * ux;
        double ay1 = gy - k * uy;
        double ux2 = ux + h / 2 * ax1;
        double uy2 = uy + h / 2 * ay1;
        k = drag / length(ux2, uy2);
        double ax2 = gx - k * ux2;
        double ay2 = gy - k * uy2;
        double ux3 = ux + h / 2 * ax2;
        double uy3 = uy + h / 2 * ay2;
        k = drag / length(ux3, uy3);
        double ax3 = gx - k * ux3;
        double ay3 = gy - k * uy3;
        double ux4 = ux + h * ax3;
        double uy4 = uy + h * ay3;
        k = drag / length(ux4, uy4);
        double ax4 = gx - k * ux4;
        double ay4 = gy - k * uy4;
        ball.x += h / 6 * (ux + 2 * ux2 + 2 * ux3 + ux4);
        ball.y += h / 6 * (uy + 2 * uy2 + 2 * uy3 + uy4);
        ball.vx += h / 6 * (ax1 + 2 * ax2 + 2 * ax3 + ax4);
        ball.vy += h / 6 * (ay1 + 2 * ay2 + 2 * ay3 + ay4);
        ball.z = Ball.RADIUS_MM;
        ball.vz = 0;
        ball.rollAlong();
    }
}
