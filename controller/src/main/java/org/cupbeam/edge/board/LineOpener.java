package org.cupbeam.edge.board;

import org.cupbeam.rig.Channel;

/** A board's way to its lines. */
@FunctionalInterface
interface LineOpener {
    /** Asks for a channel's line, with its resistor set. Throws where it cannot be had, perhaps only for now. */
    LinePort open(Channel channel);
}
