package org.cupbeam.edge.practice;

/**
 * A sensor out of order for a time.
 *
 * @param channel the channel's name in the rig
 * @param kind    what is wrong with it
 * @param fromS   since when, s from the evening's begin
 * @param toS     until when
 */
public record Fault(String channel, Kind kind, double fromS, double toS) {

    /** What may be wrong with a sensor. */
    public enum Kind {
        /** Says blocked all the time: dirt on the receiver, a transmitter knocked askew. */
        STUCK,
        /** Says nothing any more: unplugged, on a pin that then rests. */
        SILENT,
        /** Turns over hundreds of times a second: a loose contact. */
        CHATTERING
    }
}
