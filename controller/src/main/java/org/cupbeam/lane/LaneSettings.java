package org.cupbeam.lane;

import java.nio.file.Path;
import org.cupbeam.event.Command;
import org.cupbeam.event.Topics;
import org.cupbeam.rig.Rig;

/**
 * A lane to be run.
 *
 * @param topics  the studio's and the lane's name
 * @param rig     what is fitted
 * @param journal its journal's file; no other lane's
 * @param start   what is to be played; null for what was, or what a command says
 * @param lamp    the light beside the hole
 */
public record LaneSettings(Topics topics, Rig rig, Path journal, Command.Start start, Lamp lamp) {

    /** Without a lamp, and with nothing to be played until a command says so. */
    public static LaneSettings of(Topics topics, Rig rig, Path journal) {
        return new LaneSettings(topics, rig, journal, null, Lamp.NONE);
    }

    public LaneSettings with(Command.Start toPlay) {
        return new LaneSettings(topics, rig, journal, toPlay, lamp);
    }

    public LaneSettings with(Lamp fitted) {
        return new LaneSettings(topics, rig, journal, start, fitted);
    }
}
