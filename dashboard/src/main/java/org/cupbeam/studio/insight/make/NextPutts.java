package org.cupbeam.studio.insight.make;

import org.cupbeam.studio.insight.chance.BetaBinomial;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.insight.words.Words;

/**
 * How many of a player's next putts from one place will drop: luck, and what is not known of the player, both in it.
 *
 * @param distanceMm putted from
 * @param made       how many of them
 */
public record NextPutts(double distanceMm, BetaBinomial made) {
    private static final double SELDOM = 0.1;

    /** The next so many from here. */
    public static NextPutts of(Skill skill, double distanceMm, int putts) {
        double chance = Math.min(1 - 1e-6, Math.max(1e-6, skill.curve().at(distanceMm)));
        return new NextPutts(distanceMm, BetaBinomial.next(putts, chance, Math.max(1e-3, skill.logOddsSd(distanceMm))));
    }

    /** As a sentence. */
    public String inWords(Units units) {
        int low = made.quantile(SELDOM);
        int high = made.quantile(1 - SELDOM);
        return "Of your next " + Words.count(made.tries(), "putt") + " from " + units.length(distanceMm) + " "
                + (low == high ? "" + low : low + " to " + high) + " should drop.";
    }
}
