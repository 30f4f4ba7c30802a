package org.cupbeam.edge.practice;

import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.rig.Rig;

/**
 * A lane to simulate: what its rig file says, how far the truth is from it, who putts and from where, and what else
 * goes on.
 *
 * @param rig        what is fitted, as the rig file says; the simulation makes errors about it
 * @param surface    the true green
 * @param sensing    the true sensors
 * @param room       what happens beside the putts
 * @param player     who putts, unless told otherwise putt by putt
 * @param stationsMm distances to putt from, chosen at random, unless told otherwise putt by putt
 * @param restS      mean time from a ball's end to the next strike, s
 * @param faults     sensors out of order
 */
public record PracticeLane(Rig rig, Surface surface, Sensing sensing, Room room, Player player,
                           List<Double> stationsMm, double restS, List<Fault> faults) {
    private static final double PUTTER_MM = 914.4;
    private static final int STATIONS = 8;

    public PracticeLane {
        stationsMm = List.copyOf(stationsMm);
        faults = List.copyOf(faults);
        if (stationsMm.isEmpty()) {
            throw new IllegalArgumentException("a lane needs a station to putt from");
        }
    }

    /** Nothing but balls, on a green and between beams just as the rig file says. */
    public static PracticeLane clean(Rig rig) {
        return new PracticeLane(rig, Surface.asRead(), Sensing.ideal(), Room.empty(), Player.usual(), ladder(), 5,
                List.of());
    }

    /** A busy evening: usual errors, usual people, usual players. */
    public static PracticeLane busy(Rig rig) {
        return clean(rig).with(Surface.usual()).with(Sensing.usual()).with(Room.busy());
    }

    /** A duel between two in a hurry: nobody else about, the next ball mostly about a second after the last. */
    public static PracticeLane brisk(Rig rig) {
        return clean(rig).with(Surface.usual()).with(Sensing.usual()).with(Room.hurried()).resting(1);
    }

    /** As much as there can be of everything, at a quick pace. */
    public static PracticeLane rough(Rig rig) {
        return clean(rig).with(Surface.usual()).with(Sensing.rough()).with(Room.rough()).with(Player.wild())
                .resting(1.5);
    }

    public PracticeLane with(Surface other) {
        return new PracticeLane(rig, other, sensing, room, player, stationsMm, restS, faults);
    }

    public PracticeLane with(Sensing other) {
        return new PracticeLane(rig, surface, other, room, player, stationsMm, restS, faults);
    }

    public PracticeLane with(Room other) {
        return new PracticeLane(rig, surface, sensing, other, player, stationsMm, restS, faults);
    }

    public PracticeLane with(Player other) {
        return new PracticeLane(rig, surface, sensing, room, other, stationsMm, restS, faults);
    }

    /** With sensors out of order. */
    public PracticeLane with(Fault... others) {
        return new PracticeLane(rig, surface, sensing, room, player, stationsMm, restS, List.of(others));
    }

    /** Putted on from these distances. */
    public PracticeLane from(List<Double> distancesMm) {
        return new PracticeLane(rig, surface, sensing, room, player, distancesMm, restS, faults);
    }

    /** With this mean time between a ball's end and the next strike. */
    public PracticeLane resting(double seconds) {
        return new PracticeLane(rig, surface, sensing, room, player, stationsMm, seconds, faults);
    }

    /** The eight nearest stations of a ladder, one putter length apart. */
    private static List<Double> ladder() {
        return IntStream.rangeClosed(1, STATIONS).mapToObj(i -> i * PUTTER_MM).toList();
    }
}
