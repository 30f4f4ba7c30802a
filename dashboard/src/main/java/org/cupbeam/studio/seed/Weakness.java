package org.cupbeam.studio.seed;

import org.cupbeam.event.Tags;

/** What somebody is worse at than at everything else: there, direction and pace err by so much more. */
public enum Weakness {
    LEFT_TO_RIGHT(1.7, 1), RIGHT_TO_LEFT(1.7, 1), DOWNHILL(1, 1.7), UPHILL(1, 1.7),
    /** Nearer than {@link #SHORT_MM}. */
    SHORT_PUTTS(1.7, 1),
    /** Further than {@link #LONG_MM}. */
    LONG_PUTTS(1, 1.7);

    /** Up to here a putt is short. */
    public static final double SHORT_MM = 1_900;
    /** From here on it is long. */
    public static final double LONG_MM = 4_000;

    private final double directionTimes;
    private final double paceTimes;

    Weakness(double directionTimes, double paceTimes) {
        this.directionTimes = directionTimes;
        this.paceTimes = paceTimes;
    }

    /** Whether a putt is of the kind. */
    public boolean shows(Tags tags, double stationMm) {
        return switch (this) {
            case LEFT_TO_RIGHT -> tags.breaks() == Tags.Break.LEFT_TO_RIGHT;
            case RIGHT_TO_LEFT -> tags.breaks() == Tags.Break.RIGHT_TO_LEFT;
            case DOWNHILL -> tags.slope() == Tags.Slope.DOWNHILL;
            case UPHILL -> tags.slope() == Tags.Slope.UPHILL;
            case SHORT_PUTTS -> stationMm < SHORT_MM;
            case LONG_PUTTS -> stationMm > LONG_MM;
        };
    }

    Stroke on(Stroke stroke) {
        return stroke.direction(directionTimes).pace(paceTimes);
    }
}
