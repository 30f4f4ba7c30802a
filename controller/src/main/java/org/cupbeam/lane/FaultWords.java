package org.cupbeam.lane;

import org.cupbeam.rig.Channel;
import org.cupbeam.track.Doubt;

/** What is wrong with a sensor, and what would do, in words. */
final class FaultWords {
    private FaultWords() {
    }

    static String of(Channel channel, Doubt doubt) {
        return switch (doubt) {
            case NONE -> "";
            case STUCK -> called(channel) + " " + stuck(channel.kind()) + "; until then it is not believed";
            case CHATTERING -> called(channel) + " turns on and off faster than anything in play can: "
                    + loose(channel.kind()) + "; until it is quiet it is not believed";
            case REVERSED -> called(channel) + " is on at rest and off for moments, so it seems to be the wrong way round: set"
                    + " active = \"" + (channel.active() == Channel.Level.HIGH ? "low" : "high")
                    + "\" for it in the rig file, and start again; until then it is not believed";
        };
    }

    private static String called(Channel channel) {
        return switch (channel.kind()) {
            case BEAM -> "beam " + channel.name();
            case CUP -> "the cup's sensor";
            case STRIKE -> "the strike sensor";
            case PEDAL -> "the pedal";
        };
    }

    private static String stuck(Channel.Kind kind) {
        return switch (kind) {
            case BEAM -> "is blocked all the time: take away whatever lies in it, wipe it, and see that its lamp points"
                    + " at it and its cable is in";
            case CUP -> "is blocked all the time: take the balls out, see what else lies in the cup, wipe the sensor, and see"
                    + " that its cable is in";
            case STRIKE, PEDAL -> "is pressed all the time: take away whatever rests on it, and look at its cable";
        };
    }

    private static String loose(Channel.Kind kind) {
        return switch (kind) {
            case BEAM -> "turn its lamp to it, keep sunlight off it, and look at its cable and its supply";
            case CUP, STRIKE, PEDAL -> "look at its cable, its plug and its supply";
        };
    }
}
