package org.cupbeam.rig;

import java.util.List;
import java.util.OptionalInt;

/**
 * What is fitted to a lane.
 *
 * @param stimpFt       the green's speed as read, ft, as on a level green
 * @param uphillPercent slope along the line toward the hole, uphill positive
 * @param sidePercent   slope across the line, falling to the left positive
 * @param limitMm       how far past the hole's centre a miss may finish
 * @param channels      every wire; a channel's index here is its number everywhere else
 * @param beams         in order of position
 * @param lampGpio      the lamp's line, if one is fitted
 */
public record Rig(double stimpFt, double uphillPercent, double sidePercent, double limitMm,
                  List<Channel> channels, List<Beam> beams, OptionalInt lampGpio) {

    public Rig {
        channels = List.copyOf(channels);
        beams = List.copyOf(beams);
    }

    /** The index of the only channel of this kind (cup, strike, pedal), or -1 where none is fitted. */
    public int channelOf(Channel.Kind kind) {
        for (int i = 0; i < channels.size(); i++) {
            if (channels.get(i).kind() == kind) {
                return i;
            }
        }
        return -1;
    }
}
