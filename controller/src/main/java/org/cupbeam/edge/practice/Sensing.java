package org.cupbeam.edge.practice;

/**
 * How the sensors differ from ideal ones.
 *
 * @param beamPositionSdMm standard deviation of where a beam stands about what the rig file says
 * @param delayUs          mean delay of a receiver, both ways
 * @param delaySdUs        standard deviation of that from receiver to receiver, each way
 * @param jitterUs         standard deviation from edge to edge
 * @param chatterShare     share of edges at which the receiver chatters
 * @param chatterUs        the longest that it chatters for
 * @param spikesPerMinute  spikes of 10 to 80 µs, on each channel
 * @param unfeltShare      share of putts that the strike sensor does not feel
 */
public record Sensing(double beamPositionSdMm, double delayUs, double delaySdUs, double jitterUs,
                      double chatterShare, double chatterUs, double spikesPerMinute, double unfeltShare) {

    /** Beams where the rig file says, edges at the very moment. */
    public static Sensing ideal() {
        return new Sensing(0, 0, 0, 0, 0, 0, 0, 0);
    }

    /** Beams 1 mm off, receivers that lag, jitter and now and then chatter, spikes. */
    public static Sensing usual() {
        return new Sensing(1.0, 120, 40, 25, 0.05, 800, 0.3, 0);
    }
}
