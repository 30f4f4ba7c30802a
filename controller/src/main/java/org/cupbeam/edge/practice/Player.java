package org.cupbeam.edge.practice;

/**
 * Who putts, and how well.
 *
 * @param directionSdDeg standard deviation of the direction of the ball's start, degrees
 * @param paceSd         standard deviation of the length of the roll, as a share of it
 * @param aimPastMm      how far past the hole's centre the ball is meant to stop
 * @param blastShare     share of putts hit far too hard (1.4 to 3 m/s at the hole)
 * @param dudShare       share of putts hit badly short
 */
public record Player(double directionSdDeg, double paceSd, double aimPastMm, double blastShare, double dudShare) {

    /** A practised player: 0.9°, 6.5 % of the length, 300 mm past. */
    public static Player good() {
        return new Player(0.9, 0.065, 300, 0.002, 0.004);
    }

    /** A club player: 1.3°, 10 % of the length, 350 mm past. */
    public static Player usual() {
        return new Player(1.3, 0.10, 350, 0.01, 0.02);
    }

    /** Everything that can happen to a ball, and often. */
    public static Player wild() {
        return new Player(1.2, 0.15, 250, 0.06, 0.06);
    }
}
