package org.cupbeam.commission;

import org.cupbeam.rig.Channel.Level;

/**
 * A sensor with its line.
 *
 * @param sensor what was asked for
 * @param line   its index among the lines that are watched
 * @param active the level at which it is blocked, struck or pressed
 */
public record Found(Wanted sensor, int line, Level active) {
    boolean isActive(boolean high) {
        return high == (active == Level.HIGH);
    }
}
