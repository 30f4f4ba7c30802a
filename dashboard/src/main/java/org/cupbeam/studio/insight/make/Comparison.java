package org.cupbeam.studio.insight.make;

import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.insight.words.Words;

/**
 * A player's putts against somebody's rates: how many were made, and how many the others would have made of the same.
 *
 * @param name     of the others
 * @param source   of their rates
 * @param putts    compared: those from distances for which there are rates
 * @param made     of these
 * @param expected of the others from the same places
 * @param known    how far the difference may be mere chance: the standard deviation of {@code made}
 */
public record Comparison(String name, String source, int putts, int made, double expected, double known) {
    private static final double CLEAR_SDS = 2;

    /** With published rates; empty where no putt was from a distance that they cover. */
    public static Optional<Comparison> with(Bench bench, List<Tries> rows) {
        int putts = 0;
        int made = 0;
        double expected = 0;
        double variance = 0;
        for (Tries row : rows) {
            double share = bench.at(row.distanceMm()).orElse(Double.NaN);
            if (!Double.isNaN(share)) {
                putts += row.tries();
                made += row.made();
                expected += row.tries() * share;
                variance += row.tries() * share * (1 - share);
            }
        }
        return putts == 0 ? Optional.empty()
                : Optional.of(new Comparison(bench.name(), bench.source(), putts, made, expected, Math.sqrt(variance)));
    }

    /** As a sentence of its own. */
    public String inWords() {
        String off = Math.abs(made - expected) < CLEAR_SDS * known
                ? "; so few putts do not tell the two apart" : "";
        return "Of " + Words.count(putts, "putt") + " you holed " + made + "; " + name + " would have holed about "
                + Math.round(expected) + off + ".";
    }

    /** One distance as a sentence, with every bench that covers it. */
    public static String inWords(Skill player, List<Bench> benches, double distanceMm, Units units) {
        StringBuilder text = new StringBuilder("From ").append(units.length(distanceMm)).append(" you hole ")
                .append(player.at(distanceMm).inHundred());
        for (Bench bench : benches) {
            bench.at(distanceMm).ifPresent(share ->
                    text.append("; ").append(bench.name()).append(" ").append(Words.inHundred(share)));
        }
        return text.append('.').toString();
    }
}
