package org.cupbeam.studio.insight.make;

import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.chance.LogOdds;

/** A player's make rate over distance, with how well it is known. */
public interface Skill {
    /** The most likely curve. */
    MakeCurve curve();

    /** How well the chance from here is known: the standard deviation of its log odds. */
    double logOddsSd(double distanceMm);

    /** How many putts it rests on. */
    int putts();

    /** The chance from here. */
    default Estimate at(double distanceMm) {
        return Estimate.ofLogOdds(LogOdds.of(curve().at(distanceMm)), logOddsSd(distanceMm));
    }
}
