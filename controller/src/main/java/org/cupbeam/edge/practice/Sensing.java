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
 * @param cup              what kind of sensor the cup has
 */
public record Sensing(double beamPositionSdMm, double delayUs, double delaySdUs, double jitterUs,
                      double chatterShare, double chatterUs, double spikesPerMinute, double unfeltShare,
                      CupSensor cup) {

    /** Kinds of cup sensors. */
    public enum CupSensor {
        /** A curtain of light across the cup: blocked by the ball as it falls, and again when it bounces high. */
        CURTAIN,
        /** Anything that the ball shakes: one to six pulses, of no order. */
        RATTLE
    }

    private static final double LONGEST_US = 4000;

    public Sensing {
        if (delayUs + 6 * (delaySdUs + jitterUs) + chatterUs > LONGEST_US) {
            throw new IllegalArgumentException("delays, jitter and chatter come to more than " + LONGEST_US
                    + " µs: the simulation settles edges sooner than that");
        }
    }

    /** Beams where the rig file says, edges at the very moment. */
    public static Sensing ideal() {
        return new Sensing(0, 0, 0, 0, 0, 0, 0, 0, CupSensor.CURTAIN);
    }

    /** As usual, with more of each, and a strike sensor that is at times deaf. */
    public static Sensing rough() {
        return new Sensing(1.0, 200, 80, 40, 0.3, 1200, 2, 0.01, CupSensor.CURTAIN);
    }

    /** Beams 1 mm off, receivers that lag, jitter and now and then chatter, spikes. */
    public static Sensing usual() {
        return new Sensing(1.0, 120, 40, 25, 0.05, 800, 0.3, 0, CupSensor.CURTAIN);
    }

    /** The same, with a cup sensor that rattles. */
    public Sensing rattling() {
        return new Sensing(beamPositionSdMm, delayUs, delaySdUs, jitterUs, chatterShare, chatterUs, spikesPerMinute,
                unfeltShare, CupSensor.RATTLE);
    }
}
