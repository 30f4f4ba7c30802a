package org.cupbeam.edge.practice;

import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;

/**
 * The hole as a solid that the ball meets: the surface around it, its rim, its wall and its floor.
 *
 * <p>A rigid ball in three dimensions, in small fixed steps. Whatever point of the solid is nearest to the ball's
 * centre is where they touch: the turf below while the centre is outside the rim, then the rim itself, then the wall.
 * A touch pushes back like a stiff damped spring and rubs with Coulomb's friction. Capture, lip-outs and balls that
 * bounce off the far side are not put in; they come out.
 */
final class Cup {
    /** 101.6 mm: the least depth that the Rules allow. */
    static final double DEPTH_MM = 101.6;
    /**
     * Where the cup's light lies, above the surface (below it: negative): so deep that a ball at rest on the floor
     * leaves it clear, by 4 mm, and that a ball that blocks it can't come out again.
     */
    static final double LIGHT_AT_MM = Ball.DIAMETER_MM + 4 - DEPTH_MM;
    static final double STEP_S = 4e-5;
    /** A touch lasts about this long; short beside a ball's way over the hole, long beside a step. */
    private static final double TOUCH_S = 1.2e-3;
    private static final double STIFFNESS = (Math.PI / TOUCH_S) * (Math.PI / TOUCH_S);
    private static final double SPIN_GAIN = 2.5;
    private static final double SLIP_LOSS = 1 + SPIN_GAIN;

    private final Turf turf;
    private final double friction;
    private final double rimDamping;
    private final double floorDamping;

    /**
     * A hole in this turf.
     *
     * @param turf        the surface around it
     * @param rebound     share of the speed that a bounce off turf, rim or wall gives back, above 0 and below 1
     * @param floorRebound likewise for the cup's floor
     * @param friction    coefficient of friction of ball on rim, wall and floor
     */
    Cup(Turf turf, double rebound, double floorRebound, double friction) {
        this.turf = turf;
        this.friction = friction;
        this.rimDamping = damping(rebound);
        this.floorDamping = damping(floorRebound);
    }

    Turf turf() {
        return turf;
    }

    /** Moves a ball at or in the hole on by one step of {@link #STEP_S}. */
    void step(Body ball) {
        ball.vx += STEP_S * turf.pullX();
        ball.vy += STEP_S * turf.pullY();
        ball.vz -= STEP_S * turf.down();
        touchNearest(ball);
        if (ball.z < Ball.RADIUS_MM - DEPTH_MM) {
            touch(ball, 0, 0, 1, Ball.RADIUS_MM - DEPTH_MM - ball.z, floorDamping);
        }
        ball.x += STEP_S * ball.vx;
        ball.y += STEP_S * ball.vy;
        ball.z += STEP_S * ball.vz;
    }

    /** The nearest point of turf, rim or wall. */
    private void touchNearest(Body ball) {
        double out = ball.fromHole();
        if (out >= Hole.RADIUS_MM) {
            if (ball.z < Ball.RADIUS_MM) {
                touch(ball, 0, 0, 1, Ball.RADIUS_MM - ball.z, rimDamping);
            }
            return;
        }
        double gap = Hole.RADIUS_MM - out;
        double above = Math.max(0, ball.z);
        double apart = Math.sqrt(gap * gap + above * above);
        if (apart < Ball.RADIUS_MM && out > 0) {
            double inward = -gap / (apart * out);
            touch(ball, ball.x * inward, ball.y * inward, above / apart, Ball.RADIUS_MM - apart, rimDamping);
        }
    }

    /** A spring and a damper along the normal (nx, ny, nz), friction across it, and the turf's drag while it bears. */
    private void touch(Body ball, double nx, double ny, double nz, double depth, double damping) {
        double along = ball.vx * nx + ball.vy * ny + ball.vz * nz;
        double push = STIFFNESS * depth - damping * along;
        if (push <= 0) {
            return;
        }
        // The skin's speed at the touch: what is left of the motion across the normal, less the spin's.
        double sx = ball.vx - along * nx - (ball.wy * nz - ball.wz * ny);
        double sy = ball.vy - along * ny - (ball.wz * nx - ball.wx * nz);
        double sz = ball.vz - along * nz - (ball.wx * ny - ball.wy * nx);
        double slip = Math.sqrt(sx * sx + sy * sy + sz * sz);
        // Friction may stop the slip within a step, never reverse it.
        double rub = slip > 0 ? Math.min(friction * push, slip / (SLIP_LOSS * STEP_S)) / slip : 0;
        ball.vx += STEP_S * (push * nx - rub * sx);
        ball.vy += STEP_S * (push * ny - rub * sy);
        ball.vz += STEP_S * (push * nz - rub * sz);
        double spin = STEP_S * SPIN_GAIN * rub;
        ball.wx += spin * (ny * sz - nz * sy);
        ball.wy += spin * (nz * sx - nx * sz);
        ball.wz += spin * (nx * sy - ny * sx);
        resist(ball, Math.min(push, 4 * turf.down()) / turf.down());
    }

    /** Rolling resistance, in proportion to how hard the ball bears (a hard knock is no rolling, hence the cap). */
    private void resist(Body ball, double bearing) {
        double speed = ball.speed();
        double keep = speed > 0 ? Math.max(0, 1 - STEP_S * turf.drag() * bearing / speed) : 0;
        ball.vx *= keep;
        ball.vy *= keep;
        ball.vz *= keep;
        ball.wx *= keep;
        ball.wy *= keep;
        ball.wz *= keep;
    }

    /** The damper that gives back this share of the speed. */
    private static double damping(double rebound) {
        double log = StrictMath.log(rebound);
        return -2 * log / Math.sqrt(Math.PI * Math.PI + log * log) * (Math.PI / TOUCH_S);
    }
}
