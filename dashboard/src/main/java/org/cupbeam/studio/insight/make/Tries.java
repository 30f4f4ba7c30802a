package org.cupbeam.studio.insight.make;

import org.cupbeam.studio.insight.chance.Proportion;

/**
 * Putts from one distance.
 *
 * @param distanceMm from the hole's centre, above 0
 * @param tries      1 or more
 * @param made       of these
 */
public record Tries(double distanceMm, int tries, int made) {

    public Tries {
        if (!(distanceMm > 0) || tries < 1 || made < 0 || made > tries) {
            throw new IllegalArgumentException(made + " of " + tries + " putts from " + distanceMm + " mm cannot be");
        }
    }

    public Proportion proportion() {
        return new Proportion(made, tries);
    }
}
