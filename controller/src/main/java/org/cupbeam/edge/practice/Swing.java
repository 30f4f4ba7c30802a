package org.cupbeam.edge.practice;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A player's stroke: what was meant, and what came of it. */
final class Swing {
    private final Turf known;
    private final Dice dice;
    private final Map<List<Double>, Aim> aims = new HashMap<>();

    /**
     * A player on a green.
     *
     * @param known the green as its players know it
     */
    Swing(Turf known, Dice dice) {
        this.known = known;
        this.dice = dice;
    }

    Aim of(Player player, double fromMm) {
        Aim meant = aims.computeIfAbsent(List.of(fromMm, player.aimPastMm()),
                key -> Aim.at(known, fromMm, player.aimPastMm()));
        double left = meant.leftRad() + player.directionSdDeg() / 180 * Math.PI * dice.normal();
        double speed = meant.speedMmPerS() * Math.sqrt(Math.max(0.1, 1 + player.paceSd() * dice.normal()));
        double slip = dice.between(0, 1);
        if (slip < player.blastShare()) {
            double atHole = dice.between(1400, 3000);
            // What the ball must have on top, at the hole; 7/5 of that as it still slides.
            speed = Math.sqrt(speed * speed + 1.96 * atHole * atHole);
        } else if (slip < player.blastShare() + player.dudShare()) {
            speed *= dice.between(0.4, 0.95);
        }
        return new Aim(speed, left);
    }
}
