package org.cupbeam.studio.sim;

import java.util.List;

/**
 * How bad a run is: each kind of fault is there or not, rare or frequent, so that runs differ in kind and not only in
 * luck. Each is the mean time between two, ns; 0: never.
 *
 * @param slownessNs   how late a packet is at most
 * @param slowDiskNs   how late the lane's disk is at most
 * @param clockUntilNs how long after power comes the lane's wall clock is right, at most; 0: at once
 */
record Weather(long laneEnds, long hostEnds, long brokerEnds, long cuts, long jumps, long slownessNs, long slowDiskNs,
               long clockUntilNs, Broker.Unruly broker) {

    static Weather of(Dice dice) {
        return new Weather(often(dice), often(dice), often(dice), often(dice), dice.chance(0.3) ? 20 * Agenda.S : 0,
                dice.one(List.of(2L, 20L, 2_000L)) * Agenda.MS, dice.one(List.of(1L, 20L, 3_000L)) * Agenda.MS,
                dice.one(List.of(0L, 30L, 120L)) * Agenda.S, unruly(dice));
    }

    /** Nothing goes wrong. */
    static Weather fair() {
        return new Weather(0, 0, 0, 0, 0, 2 * Agenda.MS, Agenda.MS, 0, new Broker.Unruly(0, 0, false, 1_000));
    }

    private static long often(Dice dice) {
        return dice.chance(0.4) ? 0 : dice.one(List.of(6L, 15L, 40L)) * Agenda.S;
    }

    private static Broker.Unruly unruly(Dice dice) {
        return new Broker.Unruly(dice.one(List.of(0.0, 0.0, 0.03)), dice.one(List.of(0.0, 0.05, 0.3)),
                dice.chance(0.5), dice.one(List.of(5, 50, 1_000)));
    }
}
