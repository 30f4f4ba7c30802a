package org.cupbeam.edge.practice;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.cupbeam.edge.EdgeSink;

/**
 * A lane that is putted on, putt by putt: who asks for the next putt says where from, and takes the edges up to then.
 *
 * <p>The same seed and the same putts give the same edges and the same truth, bit for bit.
 */
final class LivingLane {
    private static final long NS_PER_S = 1_000_000_000L;
    private static final double S_PER_HOUR = 3600;
    private static final long FIRST_STRIKE_NS = 2 * NS_PER_S;

    private final PracticeLane lane;
    private final Sensors sensors;
    private final SplittableRandom random;
    private final double laneSpeed;
    private final double driftPerHour;
    private final Map<List<Double>, Aim> aims = new HashMap<>();
    private long nextStrikeNs = FIRST_STRIKE_NS;

    LivingLane(long seed, PracticeLane lane) {
        SplittableRandom all = new SplittableRandom(seed);
        this.lane = lane;
        sensors = new Sensors(lane, all.split());
        random = all.split();
        laneSpeed = 1 + lane.surface().laneSpeedSd() * random.nextGaussian();
        driftPerHour = lane.surface().driftSdPerHour() * random.nextGaussian();
    }

    /** When the next putt is struck. */
    long nextStrikeNs() {
        return nextStrikeNs;
    }

    /** Hands over the edges that no later putt can change. */
    void play(EdgeSink sink) {
        sensors.wires().play(nextStrikeNs, sink);
    }

    /** Hands over all edges that are left; no putt may follow. */
    void playOut(EdgeSink sink) {
        sensors.wires().play(Long.MAX_VALUE, sink);
    }

    /** Putts the next ball, from this far, and says what happened. */
    Truth putt(double fromMm, Player player) {
        long struckNs = nextStrikeNs;
        Turf turf = turf(struckNs);
        Body start = swing(fromMm, player).start(fromMm);
        Putt putt = new Putt(turf, cup(turf), start, struckNs);
        boolean felt = sensors.strike(struckNs, random);
        Shadow shadow = sensors.watch(start, struckNs);
        putt.run(shadow);
        long fetchedNs = putt.endedNs() + seconds(1.0 + 2 * random.nextDouble());
        sensors.fetch(shadow, fetchedNs);
        nextStrikeNs = Math.max(fetchedNs, putt.endedNs() + seconds(rest()));
        return putt.truth(fromMm, lane.rig().limitMm(), felt, shadow);
    }

    private double rest() {
        return lane.restS() * (0.5 + random.nextDouble());
    }

    private Turf turf(long timeNs) {
        double drift = driftPerHour * timeNs / (S_PER_HOUR * NS_PER_S);
        double putt = lane.surface().puttSpeedSd() * random.nextGaussian();
        return turf(laneSpeed * (1 + drift) * (1 + putt));
    }

    private Turf turf(double speed) {
        return Turf.of(lane.rig().stimpFt() * speed, lane.rig().uphillPercent(), lane.rig().sidePercent(),
                lane.surface().slidingFriction());
    }

    private Cup cup(Turf turf) {
        double floorRebound = 0.3 + 0.3 * random.nextDouble();
        return new Cup(turf, lane.surface().rebound(), floorRebound, lane.surface().slidingFriction());
    }

    /** What the player meant, and what came of it. */
    private Aim swing(double fromMm, Player player) {
        Aim meant = aims.computeIfAbsent(List.of(fromMm, player.aimPastMm()),
                key -> Aim.at(turf(laneSpeed), fromMm, player.aimPastMm()));
        double left = meant.leftRad() + Math.toRadians(player.directionSdDeg()) * random.nextGaussian();
        double length = Math.max(0.1, 1 + player.paceSd() * random.nextGaussian());
        double kind = random.nextDouble();
        double speed = meant.speedMmPerS() * Math.sqrt(length);
        if (kind < player.blastShare()) {
            double atHole = 1400 + 1600 * random.nextDouble();
            speed = Math.sqrt(speed * speed + 2 * atHole * atHole);
        } else if (kind < player.blastShare() + player.dudShare()) {
            speed *= 0.4 + 0.55 * random.nextDouble();
        }
        return new Aim(speed, left);
    }

    private static long seconds(double s) {
        return Math.round(s * NS_PER_S);
    }
}
