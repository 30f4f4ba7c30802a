package org.cupbeam.edge.practice;

import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;

/** One ball on its way: over the turf, at or in the hole, until it lies still or has dropped. */
final class Roll {
    /** A roll of this length is a bug in the turf, not a putt. */
    private static final double LONGEST_S = 120;
    private static final double FINEST_MM = 0.5;
    private static final double WELL_OUT_MM = Hole.RADIUS_MM + 1;
    private static final double STILL_FOR_S = 0.02;

    /** Sees each step of a ball. */
    @FunctionalInterface
    interface Watch {
        /**
         * A step was taken.
         *
         * @param before    the state at its begin
         * @param now       the state at its end
         * @param beforeS   when it began, s since the ball was set off
         * @param durationS how long it took
         */
        void step(Body before, Body now, double beforeS, double durationS);
    }

    private final Turf turf;
    private final Cup cup;
    private final Body now = new Body();
    private final Body before = new Body();
    private double timeS;
    private boolean dropped;
    private boolean touchedRim;
    private boolean sentBack;
    private double lowestMm = Ball.RADIUS_MM;

    /**
     * A ball about to be set off.
     *
     * @param turf  what it rolls on
     * @param cup   the hole, or null where there is none to meet
     * @param start its state
     */
    Roll(Turf turf, Cup cup, Body start) {
        this.turf = turf;
        this.cup = cup;
        now.set(start);
    }

    /** Rolls it out. */
    Roll run(Watch watch) {
        boolean moving = true;
        while (moving) {
            if (cup != null && now.fromHole() < Hole.RADIUS_MM) {
                moving = crossHole(watch);
            } else {
                moving = rollOn(watch);
            }
            if (timeS > LONGEST_S) {
                throw new IllegalStateException("a ball still rolls after " + LONGEST_S + " s at x = " + now.x
                        + " mm, y = " + now.y + " mm with " + now.speed() + " mm/s");
            }
        }
        return this;
    }

    private boolean rollOn(Watch watch) {
        double gap = cup == null ? Double.MAX_VALUE : (now.fromHole() - Hole.RADIUS_MM) / 2;
        before.set(now);
        double h = turf.step(now, Math.max(FINEST_MM, gap));
        if (h == 0) {
            return false;
        }
        watch.step(before, now, timeS, h);
        timeS += h;
        return true;
    }

    /** From the rim on, until it is out on the turf again (then it rolls on), has dropped, or hangs still on the lip. */
    private boolean crossHole(Watch watch) {
        double stillS = 0;
        while (timeS < LONGEST_S) {
            before.set(now);
            cup.step(now);
            watch.step(before, now, timeS, Cup.STEP_S);
            timeS += Cup.STEP_S;
            lowestMm = Math.min(lowestMm, now.z);
            stillS = now.speed() < Turf.STILL ? stillS + Cup.STEP_S : 0;
            if (now.z < Cup.LIGHT_AT_MM - Ball.RADIUS_MM && (stillS > STILL_FOR_S || staysBelow(now))) {
                dropped = true;
                return false;
            }
            if (now.fromHole() > WELL_OUT_MM && liesOnTurf(now)) {
                touchedRim = true;
                sentBack = now.vx < 0;
                return true;
            }
            if (stillS > STILL_FOR_S && now.z > 0) {
                touchedRim = true;
                return false;
            }
        }
        return false;
    }

    /** Whether it lacks the speed to come back up into the cup's light; unknown while the floor is pushing. */
    private boolean staysBelow(Body ball) {
        double up = Cup.LIGHT_AT_MM - Ball.RADIUS_MM - ball.z;
        return ball.z > Ball.RADIUS_MM - Cup.DEPTH_MM && ball.vz * ball.vz < 2 * turf.down() * up;
    }

    private static boolean liesOnTurf(Body ball) {
        return Math.abs(ball.z - Ball.RADIUS_MM) < 0.05 && Math.abs(ball.vz) < 5;
    }

    Body at() {
        return now;
    }

    double timeS() {
        return timeS;
    }

    boolean dropped() {
        return dropped;
    }

    /** Whether it was over the rim and stayed out. */
    boolean rimmedOut() {
        return touchedRim && !dropped;
    }

    /** Whether it left the rim toward the player. */
    boolean sentBack() {
        return sentBack;
    }

    /** How low its centre came, above the surface, mm. */
    double lowestMm() {
        return lowestMm;
    }
}
