package org.cupbeam.studio.insight.card;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.insight.words.Words;

/**
 * A lane's card for the wall: from each station where to aim, and how fast, so that a ball that misses stops so far past.
 *
 * @param line   the lane's, with the green's speed as it is now
 * @param pastMm how far past the hole, above 0
 * @param rows   by station, in the order asked for
 */
public record BreakCard(Line line, double pastMm, List<Aim> rows) {
    /** Nearer than this to the centre the aim is the hole itself. */
    private static final double STRAIGHT_MM = 8;
    private static final double MM_PER_M = 1000;

    public BreakCard {
        rows = List.copyOf(rows);
    }

    /** The card for stations at these distances. */
    public static BreakCard of(Line line, double pastMm, List<Double> stationsMm) {
        List<Aim> rows = new ArrayList<>();
        stationsMm.forEach(stationMm -> rows.add(Aim.past(line, stationMm, pastMm)));
        return new BreakCard(line, pastMm, rows);
    }

    /** One line a station. */
    public List<String> inWords(Units units) {
        return rows.stream().map(aim -> "From " + units.length(aim.distanceMm()) + ": aim " + where(aim, units)
                + ", strike it as for a roll of " + units.length(aim.levelRollMm(line.stimpFt())) + " on the level ("
                + Words.decimal(aim.startMmPerS() / MM_PER_M, 1) + " m/s); at the hole it has "
                + Words.decimal(aim.atHoleMmPerS() / MM_PER_M, 1) + " m/s and " + Math.round(100 * aim.share())
                + " % of the hole's width.").toList();
    }

    private static String where(Aim aim, Units units) {
        return Math.abs(aim.besideMm()) < STRAIGHT_MM ? "at the hole"
                : units.length(aim.besideMm()) + (aim.besideMm() > 0 ? " left" : " right") + " of its centre";
    }
}
