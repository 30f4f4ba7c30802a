package org.cupbeam.green;

/**
 * A green that slopes evenly, on which putts across the slope break.
 *
 * <p>Friction d opposes the ball's motion, gravity s pulls it down the fall line. With ψ the heading, d ln(v sin ψ) =
 * (d/s) d ln tan(ψ/2) along the path, and integrating gives everything here in closed form. The forms used hold from a
 * level plane (s = 0) up to the slope on which a ball no longer stops (s = d).
 *
 * @param frictionMmPerS2 d, above 0
 * @param slopeMmPerS2    s, from 0 to below d
 */
public record Plane(double frictionMmPerS2, double slopeMmPerS2) {

    public Plane {
        if (!(slopeMmPerS2 >= 0 && slopeMmPerS2 < frictionMmPerS2)) {
            throw new IllegalArgumentException("a slope's pull must lie between 0 and the green's friction of "
                    + frictionMmPerS2 + " mm/s², else a ball never stops; it is " + slopeMmPerS2);
        }
    }

    /**
     * A green by its speed and its steepest grade.
     *
     * @param stimpFt     the reading as on a level green, in ft
     * @param fallPercent fall per hundred down the fall line, 0 or more, below {@link Slope#runawayPercent}
     */
    public static Plane of(double stimpFt, double fallPercent) {
        double friction = GreenSpeed.levelDecelerationMmPerS2(stimpFt) * Slope.cosine(fallPercent);
        return new Plane(friction, Slope.pullMmPerS2(fallPercent));
    }

    /** From here to where the ball comes to rest. */
    public Reach stop(Motion now) {
        double half = now.headingRad() / 2;
        double down = square(Math.cos(half));
        double up = square(Math.sin(half));
        double v2 = square(now.speedMmPerS());
        return new Reach(
                v2 / 2 * (down * down / (frictionMmPerS2 - slopeMmPerS2) - up * up / (frictionMmPerS2 + slopeMmPerS2)),
                v2 * Math.sin(now.headingRad())
                        * (down / (2 * frictionMmPerS2 - slopeMmPerS2) + up / (2 * frictionMmPerS2 + slopeMmPerS2)));
    }

    /** The time until the ball comes to rest, in s. */
    public double stopTimeS(Motion now) {
        return now.speedMmPerS() * (frictionMmPerS2 + slopeMmPerS2 * Math.cos(now.headingRad()))
                / (square(frictionMmPerS2) - square(slopeMmPerS2));
    }

    /**
     * The motion further along the path (negative: back along it).
     *
     * @param progress ∫ d/v dt, without unit: on the level the speed falls by e for each 1; a stop is infinitely far
     */
    public Motion after(Motion now, double progress) {
        double half = now.headingRad() / 2;
        double turn = slopeMmPerS2 / frictionMmPerS2 * progress;
        double down = square(Math.cos(half)) * Math.exp(turn - progress);
        double up = square(Math.sin(half)) * Math.exp(-turn - progress);
        return new Motion(now.speedMmPerS() * (down + up),
                2 * Math.atan2(Math.sin(half) * Math.exp(-turn), Math.cos(half)));
    }

    /** From here to the place further along the path; {@code progress} as in {@link #after}. */
    public Reach reach(Motion now, double progress) {
        return stop(now).minus(stop(after(now, progress)));
    }

    private static double square(double value) {
        return value * value;
    }
}
