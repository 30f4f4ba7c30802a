package org.cupbeam.rig;

import java.util.regex.Pattern;

/**
 * One wire from a sensor.
 *
 * @param name   as in the rig file and in traces: {@code cup}, {@code strike}, {@code pedal}, or a beam's name
 * @param kind   what the sensor is
 * @param gpio   the SoC's line number (BCM)
 * @param active the level at which it is blocked, struck or pressed
 * @param pull   the resistor asked of the pin
 */
public record Channel(String name, Kind kind, int gpio, Level active, Pull pull) {
    private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,31}");

    /** What a channel's sensor is. */
    public enum Kind { CUP, STRIKE, PEDAL, BEAM }

    /** An electrical level. */
    public enum Level { HIGH, LOW }

    /** A pin's own resistor. */
    public enum Pull { UP, DOWN, OFF }

    /** Whether a trace can carry a name: up to 32 letters, digits, - and _. */
    public static boolean isName(String name) {
        return NAME.matcher(name).matches();
    }
}
