package org.cupbeam.edge.practice;

import java.util.List;
import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;

/** A ball rolled by hand beside the hole, from somewhat before the first beam to somewhat behind the last. */
final class HandRoll {
    private static final double BESIDE_MM = Hole.RADIUS_MM + 2 * Ball.DIAMETER_MM;

    private HandRoll() {
    }

    /** Its shadow. @param way 1 as putts go, -1 back */
    static Shadow through(Rig rig, Turf turf, List<? extends Light> lights, Dice dice, int way) {
        Beam first = rig.beams().get(way > 0 ? 0 : rig.beams().size() - 1);
        Beam last = rig.beams().get(way > 0 ? rig.beams().size() - 1 : 0);
        Body ball = new Body();
        ball.x = first.positionMm() - way * dice.between(150, 500);
        ball.y = dice.sign() * dice.between(BESIDE_MM, 250);
        ball.z = Ball.RADIUS_MM;
        double slows = way > 0 ? turf.alongLine() : 2 * turf.drag() - turf.alongLine();
        double farMm = Math.abs(last.positionMm() - ball.x) + dice.between(200, 900);
        ball.vx = way * Math.sqrt(2 * slows * farMm);
        ball.vy = ball.vx * dice.between(-0.02, 0.02);
        ball.rollAlong();
        Shadow shadow = new Shadow(lights, ball);
        new Roll(turf, null, ball).run(shadow);
        return shadow;
    }
}
