package org.cupbeam.track;

import org.cupbeam.green.Hole;

/**
 * Which ball a crossing is, or a drop: the one whose motion it fits best.
 *
 * <p>Works on the balls it is given and changes none of them.
 */
final class Claims {
    /** Chi-square of two degrees of freedom beyond which a crossing is not the ball's: one in three million. */
    private static final double MISFIT = 30;
    /** From the hole's middle to the cup's sensor. */
    private static final long FALL_NS = 80_000_000;
    private static final long EARLY_NS = 60_000_000;
    private static final long HANGS_NS = 300_000_000;
    private static final double CREEP_MM = 5;
    /** A ball that meets the far rim faster than this may leave the ground, and be down again by so far behind it. */
    private static final double HOP_MM_PER_S = 1000;
    private static final double HOP_MM = 600;
    private static final double HARDLY_MM_PER_S = 1700;
    private static final long ABOUT_NS = 700_000_000;
    private static final long RESTING_NS = 1_000_000_000;

    private final Lay lay;
    private final Room room;
    private final LaneBelief lane;

    Claims(Lay lay, Room room, LaneBelief lane) {
        this.lay = lay;
        this.room = room;
        this.lane = lane;
    }

    /** Whether a ball that gets through the beam could have blocked it so long, or longer a little. */
    boolean couldBeABall(int beam, long onNs, long offNs) {
        double slowestS = Math.sqrt(4 * lay.halfChordMm[beam] / lane.decelerationMmPerS2());
        return (offNs - onNs) * 1e-9 <= 1.2 * slowestS;
    }

    /** The ball that rolls freely from what was seen of it to this crossing; -1 if none does. */
    int freeAt(Ball[] balls, int count, int beam, long onNs, long offNs) {
        int best = -1;
        double least = MISFIT;
        for (int i = 0; i < count; i++) {
            double misfit = balls[i].misfit(beam, onNs, offNs);
            if (misfit < least && missedNothing(balls[i], beam, onNs)) {
                least = misfit;
                best = i;
            }
        }
        return best;
    }

    /** A ball that touched the rim too lightly for the first beam behind the hole to tell; -1 if there is none. */
    int touchedAt(Ball[] balls, int count, int beam, long onNs, long offNs) {
        for (int i = 0; i < count; i++) {
            if (balls[i].mayPart() && balls[i].partedMisfit(beam, onNs, offNs, lane) < MISFIT
                    && missedNothing(balls[i], beam, onNs)) {
                return i;
            }
        }
        return -1;
    }

    /** A ball that touched the rim and now crosses its first beam behind the hole, slower and later than it came. */
    int slowedAt(Ball[] balls, int count, int beam, long onNs, long offNs) {
        if (lay.isBeforeHole(beam) || isShoe(beam, onNs, offNs)) {
            return -1;
        }
        for (int i = 0; i < count; i++) {
            Ball ball = balls[i];
            if (!ball.hasPassedHole() && ball.crossings().count() >= 2 && missedNothing(ball, beam, onNs)
                    && isSlowed(ball, beam, onNs, offNs)) {
                return i;
            }
        }
        return -1;
    }

    /** A ball crosses every beam on its way, unless something else is in it, or it hops off the hole's far rim. */
    private boolean missedNothing(Ball ball, int beam, long untilNs) {
        Crossings crossings = ball.crossings();
        long sinceNs = crossings.timeNs(crossings.lastS());
        boolean hops = !ball.hasPassedHole() && ball.approach().speedAtMmPerS(0) > HOP_MM_PER_S;
        for (int i = crossings.lastBeam() + 1; i < beam; i++) {
            boolean hopped = hops && !lay.isBeforeHole(i) && lay.positionMm[i] < HOP_MM;
            if (!hopped && room.isClear(lay.channel[i], sinceNs, untilNs)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Whether the next beam of a pair was blocked at the same time, which a ball never does. One that had been blocked for
     * long may hold a ball at rest.
     */
    boolean isShoe(int beam, long onNs, long offNs) {
        return isShoeIn(beam - 1, beam, onNs, offNs) || isShoeIn(beam + 1, beam, onNs, offNs);
    }

    /** Whether something as fast as hardly a putt passed while somebody was about: a putter's head, more likely. */
    private boolean isWaved(int beam, long onNs, long offNs) {
        double speed = 2 * lay.halfChordMm[beam] / ((offNs - onNs) * 1e-9);
        return speed > HARDLY_MM_PER_S
                && !room.isQuiet(onNs - ABOUT_NS, onNs - 1, -1, -1);
    }

    private boolean isShoeIn(int neighbour, int beam, long onNs, long offNs) {
        if (neighbour < 0 || neighbour >= lay.beams || !room.isUsable(lay.channel[neighbour])
                || Math.abs(lay.positionMm[neighbour] - lay.positionMm[beam]) > Lay.PAIR_MM
                || lay.overlap(neighbour, beam)) {
            return false;
        }
        Sensor sensor = room.sensor(lay.channel[neighbour]);
        return sensor.blockedWithin(onNs, offNs) && !sensor.blockedWithin(onNs - RESTING_NS, onNs - RESTING_NS);
    }

    /** Whether a ball may be seen at this beam first: it is the first, or those before it were blocked. */
    boolean mayBeginAt(int beam, long onNs, long offNs) {
        if (room.seesApproach() && beam >= lay.before || isShoe(beam, onNs, offNs) || isWaved(beam, onNs, offNs)) {
            return false;
        }
        for (int i = 0; i < beam; i++) {
            if (room.isClear(lay.channel[i], onNs - Sensor.QUIET_NS, onNs)) {
                return false;
            }
        }
        return true;
    }

    /**
     * The ball that was on its way to a drop at this time; -1 if none was.
     *
     * @param withinNs how near to its expected time it must be
     */
    int dropping(Ball[] balls, int count, long onNs, long withinNs) {
        int best = -1;
        long nearest = withinNs;
        for (int i = 0; i < count; i++) {
            Ball ball = balls[i];
            if (ball.hasPassedHole() || !mayReachHole(ball.approach())) {
                continue;
            }
            double middleS = ball.approach().timeAtS(Math.min(0, ball.approach().finishMm() - 1));
            long expectedNs = ball.crossings().timeNs(middleS) + FALL_NS;
            long earliestNs = expectedNs - FALL_NS - EARLY_NS - rimToMiddleNs(ball.approach(), middleS);
            long off = Math.abs(onNs - expectedNs);
            if (onNs > earliestNs && onNs <= ball.dueNs() && off < nearest) {
                nearest = off;
                best = i;
            }
        }
        return best;
    }

    /** Whether it may get as far as the hole. */
    boolean mayReachHole(Ball ball) {
        return mayReachHole(ball.approach());
    }

    /** Whether the cup has been blocked since just when this ball would have dropped: it is full with it. */
    boolean filled(Ball ball, long blockedSinceNs) {
        if (blockedSinceNs == Sensor.NEVER) {
            return false;
        }
        double rimS = ball.approach().timeAtS(-Hole.RADIUS_MM);
        double middleS = ball.approach().timeAtS(Math.min(0, ball.approach().finishMm() - 1));
        return !Double.isNaN(rimS) && blockedSinceNs > ball.crossings().timeNs(rimS) - EARLY_NS
                && blockedSinceNs < ball.crossings().timeNs(middleS) + FALL_NS + HANGS_NS;
    }

    private boolean isSlowed(Ball ball, int beam, long onNs, long offNs) {
        double speed = 2 * lay.halfChordMm[beam] / ((offNs - onNs) * 1e-9);
        double reachesS = ball.approach().timeAtS(-Hole.RADIUS_MM);
        double freeSpeed = ball.approach().speedAtMmPerS(lay.positionMm[beam]);
        return onNs > ball.crossings().timeNs(reachesS) && onNs < ball.dueNs() && speed < 1.05 * freeSpeed;
    }

    private static boolean mayReachHole(Roll roll) {
        return roll.finishMm() + 4 * roll.finishSdMm() + CREEP_MM > -Hole.RADIUS_MM;
    }

    private static long rimToMiddleNs(Roll roll, double middleS) {
        double rimS = roll.timeAtS(-Hole.RADIUS_MM);
        return Double.isNaN(rimS) ? EARLY_NS : (long) ((middleS - rimS) * 1e9);
    }
}
