package org.cupbeam.edge.practice;

/**
 * A ball's way had there been no hole: how it would have passed the hole's centre and where it would have stopped.
 *
 * @param atHoleS     when it would have passed the centre, s since it was set off; NaN if it would not have
 * @param speedMmPerS its speed there; NaN likewise
 * @param sideMm      how far to the left of the centre; NaN likewise
 * @param restMm      where along the line it would have stopped
 * @param restS       when
 */
record Passage(double atHoleS, double speedMmPerS, double sideMm, double restMm, double restS) {

    static Passage of(Turf turf, Body start, Roll.Watch watch) {
        double[] at = {Double.NaN, Double.NaN, Double.NaN};
        Roll roll = new Roll(turf, null, start).run((before, now, beforeS, durationS) -> {
            if (before.x < 0 && now.x >= 0) {
                double share = -before.x / (now.x - before.x);
                at[0] = beforeS + share * durationS;
                at[1] = before.speed() + share * (now.speed() - before.speed());
                at[2] = before.y + share * (now.y - before.y);
            }
            watch.step(before, now, beforeS, durationS);
        });
        return new Passage(at[0], at[1], at[2], roll.at().x, roll.timeS());
    }

    static Passage of(Turf turf, Body start) {
        return of(turf, start, (before, now, beforeS, durationS) -> { });
    }

    /** Whether it would have come as far as the hole's centre. */
    boolean reached() {
        return !Double.isNaN(atHoleS);
    }
}
