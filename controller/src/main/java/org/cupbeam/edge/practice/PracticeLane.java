package org.cupbeam.edge.practice;

import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.rig.Rig;

/**
 * A lane to simulate: what its rig file says, how far the truth is from it, who putts and from where.
 *
 * @param rig        what is fitted, as the rig file says; the simulation makes errors about it
 * @param surface    the true green
 * @param sensing    the true sensors
 * @param player     who putts, unless told otherwise putt by putt
 * @param stationsMm distances to putt from, chosen at random, unless told otherwise putt by putt
 * @param restS      mean time from a ball's end to the next strike, s
 */
public record PracticeLane(Rig rig, Surface surface, Sensing sensing, Player player, List<Double> stationsMm,
                           double restS) {
    private static final double PUTTER_MM = 914.4;

    public PracticeLane {
        stationsMm = List.copyOf(stationsMm);
        if (stationsMm.isEmpty()) {
            throw new IllegalArgumentException("a lane needs a station to putt from");
        }
    }

    /** Nothing but balls, on a green and between beams just as the rig file says. */
    public static PracticeLane clean(Rig rig) {
        return new PracticeLane(rig, Surface.asRead(), Sensing.ideal(), Player.usual(), ladder(), 5);
    }

    /** The eight nearest stations of a ladder, one putter length apart. */
    private static List<Double> ladder() {
        return IntStream.rangeClosed(1, 8).mapToObj(i -> i * PUTTER_MM).toList();
    }
}
