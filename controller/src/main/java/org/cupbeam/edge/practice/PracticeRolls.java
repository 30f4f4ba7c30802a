package org.cupbeam.edge.practice;

import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;

/** Balls rolled by hand beside the hole through all beams, one after the other, on a simulated green whose truth is known. */
public final class PracticeRolls {
    private final PracticeLane lane;
    private final Sensors sensors;
    private final Dice dice;
    private final double laneSpeed;
    private long nextNs = 2_000_000_000;

    /** The same seed and the same rolls give the same edges. */
    public PracticeRolls(long seed, PracticeLane lane) {
        this.lane = lane;
        Dice all = new Dice(seed);
        sensors = new Sensors(lane, all.split());
        dice = all.split();
        laneSpeed = 1 + lane.surface().laneSpeedSd() * dice.normal();
    }

    /** The green's true speed, as on the level, in ft; single balls differ. */
    public double stimpFt() {
        return lane.rig().stimpFt() * laneSpeed;
    }

    /**
     * Rolls a ball, and hands over its edges.
     *
     * @param toward as putts go; else back
     * @return when nothing of it is to come any more, on the edges' clock
     */
    public long roll(boolean toward, EdgeSink sink) {
        Rig rig = lane.rig();
        Turf turf = Turf.of(stimpFt() * (1 + lane.surface().puttSpeedSd() * dice.normal()), rig.uphillPercent(),
                rig.sidePercent(), lane.surface().slidingFriction());
        Shadow shadow = HandRoll.through(rig, turf, sensors.lights(), dice, toward ? 1 : -1);
        sensors.cast(shadow, nextNs);
        long lastNs = shadow.changes().stream().mapToLong(Shadow.Change::timeNs).max().orElse(0);
        nextNs += lastNs + dice.ns(3, 8);
        sensors.wires().play(nextNs, sink);
        return nextNs;
    }
}
