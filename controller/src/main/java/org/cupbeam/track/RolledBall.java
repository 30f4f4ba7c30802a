package org.cupbeam.track;

import java.util.List;

/**
 * A ball that rolled through all beams of a rig, one after the other, either way.
 *
 * @param toward    toward the hole's far side, as putts go; else back
 * @param crossings in the order in which they came
 */
public record RolledBall(boolean toward, List<Crossing> crossings) {

    /**
     * One beam crossed.
     *
     * @param beam  by its place among the rig's
     * @param onNs  when the ball's leading limb reached it, on the edges' clock
     * @param offNs when its trailing limb left it
     */
    public record Crossing(int beam, long onNs, long offNs) {
    }

    public RolledBall {
        crossings = List.copyOf(crossings);
    }

    /** When it was first seen. */
    public long timeNs() {
        return crossings.get(0).onNs();
    }
}
