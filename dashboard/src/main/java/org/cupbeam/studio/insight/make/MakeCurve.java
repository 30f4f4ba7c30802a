package org.cupbeam.studio.insight.make;

/** The chance that a putt is holed, by its distance. */
@FunctionalInterface
public interface MakeCurve {
    /**
     * The chance from here.
     *
     * @param distanceMm from the hole's centre, above 0
     * @return 0 to 1
     */
    double at(double distanceMm);
}
