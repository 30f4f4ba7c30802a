package org.cupbeam.studio.insight.weak;

import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.insight.words.Words;

/**
 * What the putts say of one trait.
 *
 * @param verdict    whether it is weak, strong, neither, or not yet known
 * @param putts      that have the trait
 * @param logOdds    how far its log odds lie from those of the others of its family, drawn toward none; negative is weaker
 * @param holed      of putts with the trait, the share holed
 * @param elsewhere  the share of the same putts that would have been holed without the difference
 * @param moreNeeded how many more putts with the trait would tell a difference worth knowing; 0 where they tell already
 */
public record Finding(Trait trait, Verdict verdict, int putts, Estimate logOdds, double holed, double elsewhere,
                      int moreNeeded) {

    /** So many putts, or more: nobody putts them to find out. */
    static final int MANY = 2000;

    /** What can be said. */
    public enum Verdict { WEAK, STRONG, ALIKE, UNKNOWN }

    /** In 100 putts, how many more are holed than without the difference; negative is fewer. */
    public double perHundred() {
        return 100 * (holed - elsewhere);
    }

    /** As a sentence. */
    public String inWords(Units units) {
        String kind = trait.words(units) + " putts";
        return switch (verdict) {
            case WEAK -> "Weak: you hole " + Words.ofHundred(holed, kind) + ", where your other putts would have "
                    + Math.round(100 * elsewhere) + ".";
            case STRONG -> "Strong: you hole " + Words.ofHundred(holed, kind)
                    + ", where your other putts would have " + Math.round(100 * elsewhere) + ".";
            case ALIKE -> sentence(kind) + " are about as good as your others.";
            case UNKNOWN -> "Not yet known of " + kind + ": about " + moreNeeded + (moreNeeded >= MANY ? " or more" : " more") + " would tell.";
        };
    }

    private static String sentence(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
