package org.cupbeam.studio.seed;

/**
 * How somebody putts: two errors that have nothing to do with each other, and now and then a putt that is neither.
 *
 * @param directionSdDeg standard deviation of the start's direction
 * @param aimPastMm      how far past the hole the ball is meant to stop
 * @param paceSd         standard deviation of the length of the roll, as a share of it
 * @param mishitShare    of putts whose length is anything from nothing to twice what was meant
 */
public record Stroke(double directionSdDeg, double aimPastMm, double paceSd, double mishitShare) {
    Stroke direction(double times) {
        return new Stroke(directionSdDeg * times, aimPastMm, paceSd, mishitShare);
    }

    Stroke pace(double times) {
        return new Stroke(directionSdDeg, aimPastMm, paceSd * times, mishitShare);
    }
}
