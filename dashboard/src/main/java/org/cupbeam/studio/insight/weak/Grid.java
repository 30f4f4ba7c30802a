package org.cupbeam.studio.insight.weak;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.chance.Proportion;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Tallies;
import org.cupbeam.studio.insight.words.Units;

/**
 * Putts by distance, break and slope together: each kind set against the others of its distance, length for length. It is
 * marked so seldom that of players who are alike in all kinds one in twenty sees any mark.
 *
 * @param cells by distance, then break, then slope; all 27, putted or not
 */
public record Grid(List<Cell> cells) {
    /** Of 27 cells none passes this by chance 95 times in 100: the normal value of 1 - 0.05 / (2 · 27). */
    private static final double CLEAR_SDS = 3.11;
    /** A difference in log odds that a coach would want to know: some 12 in 100 at even chances. */
    private static final double WORTH_KNOWING = 0.5;
    /** With so many standard deviations, a true difference is found in four cases of five. */
    private static final double FOUND_SDS = CLEAR_SDS + 0.84;
    private static final double TOLD_ENOUGH = Math.pow(FOUND_SDS / WORTH_KNOWING, 2);
    private static final double USUAL_TOLD = 0.2;
    private static final int ROUND_TO = 10;
    private static final int ROUNDS = 6;

    /**
     * One kind.
     *
     * @param expected   of its putts, holed as the others of the distance are
     * @param moreNeeded of its putts, to tell a difference worth knowing; 0 where they tell already
     */
    public record Cell(Trait distance, Trait breaks, Trait slope, int putts, int made, double expected,
                       Finding.Verdict verdict, int moreNeeded) {
        public Proportion proportion() {
            return new Proportion(made, putts);
        }

        /** As a sentence. */
        public String inWords(Units units) {
            String kind = distance.words(units) + ", " + breaks.words() + ", " + slope.words() + " putts";
            String tally = putts == 0 ? "none yet" : made + " of " + putts + ", where about " + Math.round(expected)
                    + " would drop if they were like the others of that distance";
            return switch (verdict) {
                case WEAK -> "Weak: " + kind + ", " + tally + ".";
                case STRONG -> "Strong: " + kind + ", " + tally + ".";
                case ALIKE -> "Like the others: " + kind + ", " + tally + ".";
                case UNKNOWN -> "Not yet known: " + kind + ", " + tally + "; about " + more() + " would tell.";
            };
        }

        /** How many more putts would tell. */
        public String more() {
            return moreNeeded + (moreNeeded >= Finding.MANY ? " or more" : " more");
        }
    }

    public Grid {
        cells = List.copyOf(cells);
    }

    /** Of a player's putts. */
    public static Grid of(Tallies tallies, MakeCurve curve) {
        List<Row> rows = tallies.byKind().stream().map(kind -> new Row(kind, curve.at(kind.tries().distanceMm()))).toList();
        List<Cell> cells = new ArrayList<>();
        for (Trait distance : of(Trait.Family.DISTANCE)) {
            List<Row> band = levelled(rows.stream().filter(row -> row.has(distance)).toList());
            for (Trait breaks : of(Trait.Family.BREAK)) {
                for (Trait slope : of(Trait.Family.SLOPE)) {
                    cells.add(cell(distance, breaks, slope, band));
                }
            }
        }
        return new Grid(cells);
    }

    /** Putts of one kind from one place. @param chance that such a putt drops, the kind not looked at */
    private record Row(Tallies.Kind kind, double chance) {
        boolean has(Trait trait) {
            return trait.of(kind.tries().distanceMm(), kind.breaks(), kind.lie());
        }

        double expected() {
            return kind.tries().tries() * chance;
        }

        double told() {
            return expected() * (1 - chance);
        }

        Row moved(double by) {
            return new Row(kind, LogOdds.moved(chance, by));
        }
    }

    private static Cell cell(Trait distance, Trait breaks, Trait slope, List<Row> band) {
        List<Row> here = band.stream().filter(row -> row.has(breaks) && row.has(slope)).toList();
        int putts = here.stream().mapToInt(row -> row.kind.tries().tries()).sum();
        int made = here.stream().mapToInt(row -> row.kind.tries().made()).sum();
        double expected = here.stream().mapToDouble(Row::expected).sum();
        double told = told(here);
        // What the cell's putts tell against the others': where there are no others, nothing.
        double against = told > 0 ? told * (1 - told / told(band)) : 0;
        double off = made - expected;
        Finding.Verdict verdict = against > 1 && Math.abs(off) > CLEAR_SDS * Math.sqrt(against)
                ? off < 0 ? Finding.Verdict.WEAK : Finding.Verdict.STRONG
                : against >= TOLD_ENOUGH ? Finding.Verdict.ALIKE : Finding.Verdict.UNKNOWN;
        double each = told > 0 ? told / putts : USUAL_TOLD;
        int needed = verdict != Finding.Verdict.UNKNOWN ? 0
                : (int) Math.min(Finding.MANY, ROUND_TO * Math.ceil((TOLD_ENOUGH - against) / each / ROUND_TO));
        return new Cell(distance, breaks, slope, putts, made, expected, verdict, needed);
    }

    /** Moved so that at this distance, whatever the kind, as many drop as did: the curve may be off there. */
    private static List<Row> levelled(List<Row> band) {
        List<Row> rows = band;
        for (int round = 0; round < ROUNDS; round++) {
            double off = rows.stream().mapToDouble(row -> row.kind.tries().made() - row.expected()).sum();
            double by = Math.max(-1, Math.min(1, off / Math.max(1, told(rows))));
            rows = rows.stream().map(row -> row.moved(by)).toList();
        }
        return rows;
    }

    private static double told(List<Row> rows) {
        return rows.stream().mapToDouble(Row::told).sum();
    }

    private static List<Trait> of(Trait.Family family) {
        return Arrays.stream(Trait.values()).filter(each -> each.family() == family).toList();
    }
}
