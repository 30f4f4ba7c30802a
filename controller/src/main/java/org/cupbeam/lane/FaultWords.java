package org.cupbeam.lane;

import java.util.Locale;
import org.cupbeam.rig.Channel;
import org.cupbeam.track.Reason;

/** What is wrong with a sensor, and what would do, in words. */
final class FaultWords {
    private FaultWords() {
    }

    /** @param fellow the other beam, where two are compared */
    static String of(Channel channel, Reason reason, Channel fellow) {
        return switch (reason.doubt()) {
            case NONE -> "";
            case STUCK -> called(channel) + " " + stuck(channel.kind()) + "; until then it is not believed";
            case CHATTERING -> called(channel) + " turns on and off faster than anything in play can: "
                    + loose(channel.kind()) + "; until it is quiet it is not believed";
            case REVERSED -> called(channel) + " is on at rest and off for moments, so it seems to be the wrong way round: set"
                    + " active = \"" + (channel.active() == Channel.Level.HIGH ? "low" : "high")
                    + "\" for it in the rig file, and start again; until then it is not believed";
            case SILENT -> called(channel) + " " + silent(channel.kind(), fellow)
                    + " and try it by hand; until it says something it is not believed";
            case DRY -> "the cup's sensor has said nothing in many putts: drop a ball in, to see that it works; if it does not,"
                    + " putts were holed that were counted as misses";
            case SWAPPED -> "more balls came back past the beams " + channel.name() + " and " + fellow.name() + " than went there,"
                    + " so they seem to be swapped: change their plugs over, or their gpio in the rig file; until then"
                    + " neither is believed";
            case MISPLACED -> String.format(Locale.ROOT, "the beams %s and %s are %.0f mm apart by the balls, %.0f mm by the"
                    + " rig file: measure both from the hole's centre, and set position_mm; until then neither is believed",
                    channel.name(), fellow.name(), reason.insteadMm(), reason.apartMm());
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

    private static String silent(Channel.Kind kind, Channel fellow) {
        return switch (kind) {
            case BEAM -> "sees nothing of the balls that beam " + fellow.name() + " sees: look at its cable and its lamp,";
            case CUP -> "says nothing of balls that come to the hole and go no further: look at its cable,";
            case STRIKE, PEDAL -> "feels no putt any more: look at its cable,";
        };
    }
}
