package org.cupbeam.studio.seed;

import java.util.random.RandomGenerator;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Tags;
import org.cupbeam.green.GreenSpeed;

/**
 * A lane's green on one day.
 *
 * @param stimpFt   its speed
 * @param tiltPercent by which it is tilted for putts that lie up or down, 0 or more
 */
record Green(double stimpFt, double tiltPercent) {
    private static final double KNOWN_SD_FT = 0.12;

    /** The day's speed: about the usual one, quicker on some days than on others. */
    static Green today(double usualFt, RandomGenerator random) {
        return new Green(usualFt + 0.25 * random.nextGaussian(), 1);
    }

    GreenNow said(Tags tags) {
        return new GreenNow(Math.round(1_000 * stimpFt) / 1_000.0, KNOWN_SD_FT, uphillPercent(tags));
    }

    double decelerationMmPerS2(Tags tags) {
        return GreenSpeed.decelerationMmPerS2(stimpFt, uphillPercent(tags));
    }

    private double uphillPercent(Tags tags) {
        if (tags.slope() == null) {
            return 0;
        }
        return switch (tags.slope()) {
            case UPHILL -> tiltPercent;
            case DOWNHILL -> -tiltPercent;
            case LEVEL -> 0;
        };
    }
}
