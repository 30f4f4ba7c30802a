package org.cupbeam.track;

/** A ball that came to rest in the very first beam: no speed tells of it, only that the beam stays blocked with nobody about. */
final class Resting {
    /** Longer than this in one beam without a break, and with nobody about, is a ball at rest. */
    private static final double REST_S = 0.6;
    private static final long QUIET_BEFORE_NS = 700_000_000;

    private final Lay lay;
    private final Room room;
    private final LaneBelief lane;
    private final Strikes strikes;
    private final Doubts doubts;
    private long seenNs = Sensor.NEVER;

    Resting(Lay lay, Room room, LaneBelief lane, Strikes strikes, Doubts doubts) {
        this.lay = lay;
        this.room = room;
        this.lane = lane;
        this.strikes = strikes;
        this.doubts = doubts;
    }

    /** When what lies in the beam may be taken for a ball; {@link Sensor#NEVER} if nothing does. */
    long dueNs() {
        if (lay.beams == 0 || !room.isUsable(lay.channel[0]) || room.isHalf(0)
                || doubts.isOnFromStart(lay.channel[0])) {
            return Sensor.NEVER;
        }
        long since = room.sensor(lay.channel[0]).blockedSinceNs();
        if (since == Sensor.NEVER || since == seenNs) {
            return Sensor.NEVER;
        }
        double crossing = Math.sqrt(4 * lay.halfChordMm[0] / lane.decelerationMmPerS2());
        return since + (long) ((crossing + REST_S) * 1e9);
    }

    /** The attempt that it is; null if somebody is about, or none was felt. */
    Attempt settle(long nowNs) {
        long since = room.sensor(lay.channel[0]).blockedSinceNs();
        seenNs = since;
        if (!room.isQuiet(since - QUIET_BEFORE_NS, nowNs, lay.channel[0], lay.channel[0])) {
            return null;
        }
        long first = since;
        if (room.feelsStrikes()) {
            double arriving = Math.sqrt(2 * lane.decelerationMmPerS2() * lay.halfChordMm[0]);
            first = strikes.takeFor(since, arriving, lane.decelerationMmPerS2());
            if (first == Sensor.NEVER) {
                return null;
            }
        }
        return Verdict.missedIn(first, nowNs, lay.positionMm[0] + lane.mean[LaneBelief.offset(0)], lay.halfChordMm[0]);
    }
}
