package org.cupbeam.edge.practice;

/**
 * How the true green differs from what the rig file says of it, and what its turf and hole are made of.
 *
 * @param laneSpeedSd     standard deviation of a lane's speed about the reading, as a share
 * @param puttSpeedSd     standard deviation from putt to putt, as a share
 * @param driftSdPerHour  standard deviation of the lane's drift, share per hour
 * @param slidingFriction coefficient of friction of a ball that slides, above 0
 * @param rebound         share of its speed that a ball keeps when it bounces off turf or rim, in (0, 1)
 */
public record Surface(double laneSpeedSd, double puttSpeedSd, double driftSdPerHour, double slidingFriction,
                      double rebound) {
    private static final double SLIDING_FRICTION = 0.4;
    private static final double REBOUND = 0.4;

    /** Just as fast as the rig file says, for every putt. */
    public static Surface asRead() {
        return new Surface(0, 0, 0, SLIDING_FRICTION, REBOUND);
    }

    /** 1.5 % off from lane to lane, 0.4 % from putt to putt, drifting by 0.5 % an hour. */
    public static Surface usual() {
        return new Surface(0.015, 0.004, 0.005, SLIDING_FRICTION, REBOUND);
    }
}
