package org.cupbeam.edge.practice;

/**
 * A ball's way had there been no hole: how it would have passed the hole's centre and where it would have stopped.
 *
 * @param reached     whether it came as far as the hole's centre
 * @param speedMmPerS its speed there; NaN if it did not
 * @param sideMm      how far to the left of the centre; NaN if it did not
 * @param restMm      where along the line it would have stopped
 */
record Passage(boolean reached, double speedMmPerS, double sideMm, double restMm) {

    static Passage of(Turf turf, Body start) {
        double[] at = {Double.NaN, Double.NaN};
        Roll roll = new Roll(turf, null, start).run((before, now, beforeS, durationS) -> {
            if (before.x < 0 && now.x >= 0) {
                double share = -before.x / (now.x - before.x);
                at[0] = before.speed() + share * (now.speed() - before.speed());
                at[1] = before.y + share * (now.y - before.y);
            }
        });
        return new Passage(!Double.isNaN(at[0]), at[0], at[1], roll.at().x);
    }
}
