package org.cupbeam.studio.insight.run;

/**
 * What may come of one putt from a station.
 *
 * @param holed    the chance that it drops
 * @param overshot the chance that it misses and runs past the limit
 */
public record Odds(double holed, double overshot) {

    public Odds {
        if (!(holed >= 0 && overshot >= 0 && holed + overshot <= 1 + 1e-12)) {
            throw new IllegalArgumentException("chances of " + holed + " and " + overshot + " cannot be");
        }
    }
}
