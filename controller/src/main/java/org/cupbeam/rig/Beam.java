package org.cupbeam.rig;

/**
 * A light beam across the line.
 *
 * @param channel    its index in {@link Rig#channels()}
 * @param positionMm along the line from the hole's centre, before it negative
 * @param heightMm   above the surface
 */
public record Beam(int channel, double positionMm, double heightMm) {
}
