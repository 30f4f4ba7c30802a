package org.cupbeam.studio.insight.run;

import org.cupbeam.studio.insight.words.Words;

/**
 * Stations given to the weaker of two, so that their duel is as even as whole stations can make it.
 *
 * @param stations    0 or more
 * @param firstWeaker whether the first one is given them
 * @param odds        of the duel with them, the stronger one first
 */
public record HeadStart(int stations, boolean firstWeaker, DuelOdds odds) {

    /** The fairest one for two forecasts of the same drill. */
    public static HeadStart of(Forecast first, Forecast second) {
        boolean firstWeaker = DuelOdds.of(first, second, 0).even() < 0.5;
        Forecast stronger = firstWeaker ? second : first;
        Forecast weaker = firstWeaker ? first : second;
        HeadStart best = null;
        for (int stations = 0; stations <= stronger.stations(); stations++) {
            HeadStart next = new HeadStart(stations, firstWeaker, DuelOdds.of(stronger, weaker, stations));
            if (best != null && next.unfair() >= best.unfair()) {
                return best;
            }
            best = next;
        }
        return best;
    }

    private double unfair() {
        return Math.abs(odds.even() - 0.5);
    }

    /** As a sentence. */
    public String inWords(String firstName, String secondName) {
        String weaker = firstWeaker ? firstName : secondName;
        String stronger = firstWeaker ? secondName : firstName;
        if (stations == 0) {
            return "No head start makes this duel more even.";
        }
        return "Give " + weaker + " " + Words.count(stations, "station") + " to begin with: then " + stronger
                + " should win " + Words.ofHundred(odds.even(), "duels") + ".";
    }
}
