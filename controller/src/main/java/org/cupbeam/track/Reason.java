package org.cupbeam.track;

/**
 * Why a sensor is not believed, as far as it takes to put it right.
 *
 * @param doubt     what is wrong with it
 * @param fellow    the channel of the beam that tells so, where two are compared; else -1
 * @param insteadMm how far apart the two stand by the balls, mm, where they are misplaced; else NaN
 * @param apartMm   how far apart by the rig file, mm, likewise
 */
public record Reason(Doubt doubt, int fellow, double insteadMm, double apartMm) {
    static Reason of(Doubt doubt) {
        return new Reason(doubt, -1, Double.NaN, Double.NaN);
    }
}
