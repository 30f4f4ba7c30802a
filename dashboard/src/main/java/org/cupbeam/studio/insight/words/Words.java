package org.cupbeam.studio.insight.words;

import java.util.List;
import java.util.Locale;

/** Shares and counts in words that need no statistics. */
public final class Words {
    private Words() {
    }

    /** A share of one, as {@code 42 in 100}; what would round to none or all says so. */
    public static String inHundred(double share) {
        long hundredths = Math.round(100 * share);
        if (hundredths <= 0) {
            return "fewer than 1 in 100";
        }
        return hundredths >= 100 ? "more than 99 in 100" : hundredths + " in 100";
    }

    /** A share with what else it may well be, as {@code 42 in 100 (35 to 49)}. */
    public static String inHundred(double share, double low, double high) {
        return inHundred(share) + " (" + Math.round(100 * low) + " to " + Math.round(100 * high) + ")";
    }

    /** How many of a hundred things, as {@code 42 of 100 runs}. */
    public static String ofHundred(double share, String nouns) {
        return inHundred(share).replace(" in ", " of ") + " " + nouns;
    }

    /** A number and its noun, as {@code 1 ball} or {@code 3 balls}. */
    public static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** A number with so many decimals. */
    public static String decimal(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /** Items as a sentence lists them: {@code a, b and c}. */
    public static String list(List<String> items) {
        int last = items.size() - 1;
        return last < 1 ? String.join("", items)
                : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
    }
}
