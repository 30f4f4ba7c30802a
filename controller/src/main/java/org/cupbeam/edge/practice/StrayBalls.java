package org.cupbeam.edge.practice;

import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;

/** Balls that roll and are no putts: sent back to the player, or rolled on from beside the hole. */
final class StrayBalls {
    private static final double CLEAR_OF_HOLE_MM = Hole.RADIUS_MM + 2 * Ball.DIAMETER_MM;
    private static final double NS_PER_S = 1e9;

    private final Sensors sensors;
    private final Hands hands;
    private final Dice dice;

    StrayBalls(Sensors sensors, Hands hands, Dice dice) {
        this.sensors = sensors;
        this.hands = hands;
        this.dice = dice;
    }

    /** Back to the player, from beyond the last beam: rolled or kicked, or led at an even speed by foot or putter. */
    long back(Turf turf, long fromNs) {
        double startMm = last() + dice.between(100, 500);
        if (dice.chance(0.3)) {
            return led(startMm, dice.between(250, 1500), fromNs);
        }
        return rolled(turf, startMm, -dice.between(800, 2500), fromNs);
    }

    /** On, from beside the hole: no putt, and no beam before the hole has seen it. */
    long forward(Turf turf, long fromNs) {
        return rolled(turf, dice.between(20, 90), dice.between(300, 1500), fromNs);
    }

    /** Whether a beam stands before the hole, and so can tell a putt from a ball rolled on from the hole. */
    boolean canTellForward() {
        return !sensors.beams().isEmpty() && sensors.beams().get(0).positionMm() < -CLEAR_OF_HOLE_MM;
    }

    private double last() {
        return sensors.beams().get(sensors.beams().size() - 1).positionMm();
    }

    /** Freely, past the hole; should it stop in a beam, it is picked up there. */
    private long rolled(Turf turf, double fromMm, double speedMmPerS, long startNs) {
        Body ball = new Body();
        ball.x = fromMm;
        ball.y = dice.sign() * dice.between(CLEAR_OF_HOLE_MM, 300);
        ball.z = Ball.RADIUS_MM;
        ball.vx = speedMmPerS;
        ball.vy = speedMmPerS * dice.between(0, 0.05) * Math.signum(ball.y);
        ball.rollAlong();
        Shadow shadow = new Shadow(sensors.lights(), ball);
        Roll roll = new Roll(turf, null, ball).run(shadow);
        sensors.cast(shadow, startNs);
        long endNs = startNs + Math.round(roll.timeS() * NS_PER_S);
        return shadow.blocksAny() ? hands.pickUp(shadow, endNs + dice.ns(0.5, 2.5), 0.7) : endNs;
    }

    /** At an even speed, toward the player. */
    private long led(double fromMm, double speedMmPerS, long startNs) {
        long endNs = startNs;
        for (int i = 0; i < sensors.beams().size(); i++) {
            Light.Beam beam = sensors.beams().get(i);
            double up = beam.heightMm() - Ball.RADIUS_MM;
            double half = Math.sqrt(Math.max(0, Ball.RADIUS_MM * Ball.RADIUS_MM - up * up));
            double wayMm = fromMm - beam.positionMm();
            long offNs = startNs + Math.round((wayMm + half) / speedMmPerS * NS_PER_S);
            if (half > 0) {
                sensors.beamWire(i).block(startNs + Math.round((wayMm - half) / speedMmPerS * NS_PER_S), offNs);
            }
            endNs = Math.max(endNs, offNs);
        }
        return endNs;
    }
}
