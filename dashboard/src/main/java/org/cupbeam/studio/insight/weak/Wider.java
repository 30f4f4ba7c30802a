package org.cupbeam.studio.insight.weak;

import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.insight.words.Words;

/**
 * A kind of putts whose direction or pace scatters clearly more than that of the others.
 *
 * @param direction of direction, else of pace
 * @param times     how many times as wide, drawn toward one
 * @param here      as measured: degrees, or hundredths of the length
 * @param elsewhere the same of the others
 * @param putts     measured of this kind
 */
public record Wider(Trait trait, boolean direction, Estimate times, double here, double elsewhere, int putts) {

    /** As a sentence. */
    public String inWords(Units units) {
        return "On " + trait.words(units) + " putts your " + (direction
                ? "direction scatters by " + Words.decimal(here, 1) + " degrees, elsewhere by "
                        + Words.decimal(elsewhere, 1)
                : "length scatters by " + Words.decimal(here, 0) + " in 100, elsewhere by " + Words.decimal(elsewhere, 0))
                + " (" + Words.count(putts, "putt") + ").";
    }
}
