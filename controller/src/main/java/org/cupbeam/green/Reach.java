package org.cupbeam.green;

/**
 * How far a ball has come on a plane.
 *
 * @param downMm   along the fall line, downhill positive
 * @param acrossMm across it, positive to the side of positive headings
 */
public record Reach(double downMm, double acrossMm) {

    Reach minus(Reach other) {
        return new Reach(downMm - other.downMm, acrossMm - other.acrossMm);
    }
}
