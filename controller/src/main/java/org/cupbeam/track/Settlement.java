package org.cupbeam.track;

/**
 * What becomes of a ball of which nothing more will be seen: an attempt, or nothing if it was no ball.
 */
final class Settlement {
    private static final double ARRIVAL_MISFIT = 20;
    private static final double CREEP_MM = 5;
    private static final double MARGIN_S = 0.03;
    private static final long LATE_NS = 250_000_000;
    /** Who blocks one beam by hand or foot is about for so long before. */
    private static final long ABOUT_NS = 700_000_000;

    private final Lay lay;
    private final Room room;
    private final LaneBelief lane;
    private final Verdict verdict;

    Settlement(Lay lay, Room room, LaneBelief lane, Verdict verdict) {
        this.lay = lay;
        this.room = room;
        this.lane = lane;
        this.verdict = verdict;
    }

    /** The attempt that it was; null if it was none. */
    Attempt settle(Ball ball, long nowNs) {
        if (ball.isSlowed() && ball.crossings().count() - ball.lastStretchFrom() == 1 && !stopsBeforeNext(ball)) {
            ball.unslow();
        }
        verdict.partIfTouched(ball);
        boolean once = ball.crossings().count() == 1;
        if (once && room.isHalf(ball.crossings().lastBeam())) {
            return null;
        }
        boolean stops = stopsBeforeNext(ball);
        boolean arrived = arriveAtNext(ball);
        if (once && (!arrived && !stops || !isAlone(ball, arrived, nowNs))) {
            return null;
        }
        return verdict.missed(ball, nowNs, shortOfMm(ball));
    }

    /** Whether nobody was about who could have blocked the one beam that the ball was seen to cross. */
    private boolean isAlone(Ball ball, boolean arrived, long nowNs) {
        Crossings crossings = ball.crossings();
        long sinceNs = crossings.originNs() - ABOUT_NS;
        int crossed = lay.channel[crossings.beam(0)];
        int stoppedIn = arrived ? lay.channel[crossings.lastBeam()] : crossed;
        long arrivedNs = crossings.timeNs(crossings.lastS());
        return room.isQuiet(sinceNs, nowNs, crossed, stoppedIn)
                && (!arrived || !room.sensor(stoppedIn).blockedWithin(sinceNs, arrivedNs - 1));
    }

    /** Whether its speed says that it stops before it would leave the next beam. */
    private boolean stopsBeforeNext(Ball ball) {
        int next = ball.crossings().lastBeam() + 1;
        Roll roll = ball.current();
        return next >= lay.beams
                || roll.finishMm() - 4 * roll.finishSdMm() - CREEP_MM < lay.arrivalMm(next)
                || !wasClear(next, ball);
    }

    private boolean wasClear(int beam, Ball ball) {
        Crossings crossings = ball.crossings();
        return room.isClear(lay.channel[beam], crossings.timeNs(crossings.lastS()), ball.stopsNs());
    }

    /** Looks for the block that a ball makes which stops in the next beam. */
    private boolean arriveAtNext(Ball ball) {
        Crossings crossings = ball.crossings();
        int next = crossings.lastBeam() + 1;
        if (next >= lay.beams || !room.isUsable(lay.channel[next])) {
            return false;
        }
        Sensor sensor = room.sensor(lay.channel[next]);
        long onNs = sensor.firstOnWithin(crossings.timeNs(ball.earliestS(next)), ball.stopsNs() + LATE_NS);
        if (onNs == Sensor.NEVER || isThrough(next, onNs, sensor.endOf(onNs))
                || ball.arrivalMisfit(next, onNs) > ARRIVAL_MISFIT) {
            return false;
        }
        ball.arrive(next, onNs);
        return true;
    }

    /** Whether it was another ball's, which rolled through: one that stops there blocks the beam for longer. */
    private boolean isThrough(int beam, long onNs, long offNs) {
        return offNs != Sensor.NEVER
                && (offNs - onNs) * 1e-9 < Math.sqrt(4 * lay.halfChordMm[beam] / lane.decelerationMmPerS2());
    }

    /**
     * The place that it is known not to have passed, at least not in free roll: the first beam that did not see it when it
     * would have. Infinite where nothing would have told.
     */
    private double shortOfMm(Ball ball) {
        Crossings crossings = ball.crossings();
        for (int beam = crossings.lastBeam() + 1; beam < lay.beams; beam++) {
            if (wouldHaveSeen(beam, ball)) {
                return lay.arrivalMm(beam) + lane.mean[LaneBelief.offset(beam)];
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private boolean wouldHaveSeen(int beam, Ball ball) {
        Crossings crossings = ball.crossings();
        double arrivesS = ball.current().timeAtS(lay.arrivalMm(beam));
        double leavesS = ball.current().timeAtS(lay.departureMm(beam));
        if (Double.isNaN(arrivesS) || Double.isNaN(leavesS)) {
            return wasClear(beam, ball);
        }
        double sinceLastS = arrivesS - crossings.lastS();
        long fromNs = crossings.timeNs(arrivesS - 0.05 * sinceLastS - MARGIN_S);
        long toNs = crossings.timeNs(leavesS + 0.05 * sinceLastS + MARGIN_S);
        return room.isClear(lay.channel[beam], fromNs, toNs);
    }
}
