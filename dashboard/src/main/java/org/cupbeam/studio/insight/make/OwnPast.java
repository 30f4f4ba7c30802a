package org.cupbeam.studio.insight.make;

import java.util.List;
import org.cupbeam.studio.insight.words.Words;

/**
 * A player's putts against the same player's earlier make rate.
 *
 * @param putts    now
 * @param made     of these
 * @param expected of these at the earlier rate
 * @param sd       how far the difference may be mere chance, or the earlier rate not known: a standard deviation
 */
public record OwnPast(int putts, int made, double expected, double sd) {
    private static final double CLEAR_SDS = 2;

    /** From the skill of back then and the putts of now. */
    public static OwnPast of(Skill then, List<Tries> now) {
        int putts = 0;
        int made = 0;
        double expected = 0;
        double byChance = 0;
        double byDoubt = 0;
        for (Tries row : now) {
            double chance = then.curve().at(row.distanceMm());
            double variance = row.tries() * chance * (1 - chance);
            putts += row.tries();
            made += row.made();
            expected += row.tries() * chance;
            byChance += variance;
            byDoubt += variance * then.logOddsSd(row.distanceMm());
        }
        return new OwnPast(putts, made, expected, Math.sqrt(byChance + byDoubt * byDoubt));
    }

    /** Whether the difference is more than chance would make it. */
    public boolean clear() {
        return Math.abs(made - expected) > CLEAR_SDS * sd;
    }

    /** As a sentence. */
    public String inWords() {
        return "Of " + Words.count(putts, "putt") + " you holed " + made + "; at your earlier rate about "
                + Math.round(expected) + " would have dropped" + (clear() ? "." : ", which may be chance.");
    }
}
