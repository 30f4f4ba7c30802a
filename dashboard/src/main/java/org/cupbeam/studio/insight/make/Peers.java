package org.cupbeam.studio.insight.make;

import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.insight.words.Words;

/**
 * How the studio's own players putt from one distance, nobody named.
 *
 * @param players    that it rests on
 * @param distanceMm putted from
 * @param quarter    the rate that a quarter of them stay below
 * @param half       that half do
 * @param threeQuarters that three quarters do
 */
public record Peers(int players, double distanceMm, double quarter, double half, double threeQuarters) {
    /** Among fewer, a band would point at somebody. */
    public static final int PLAYERS_MIN = 8;

    /** The bands; none among too few players. */
    public static Optional<Peers> from(List<? extends MakeCurve> players, double distanceMm) {
        if (players.size() < PLAYERS_MIN) {
            return Optional.empty();
        }
        double[] rates = players.stream().mapToDouble(each -> each.at(distanceMm)).sorted().toArray();
        return Optional.of(new Peers(rates.length, distanceMm, quantile(rates, 0.25), quantile(rates, 0.5),
                quantile(rates, 0.75)));
    }

    /** Where a rate stands among them, as a sentence. */
    public String inWords(double rate, Units units) {
        String where = rate < quarter ? "the lower quarter" : rate < half ? "the second quarter from below"
                : rate < threeQuarters ? "the second quarter from above" : "the upper quarter";
        return "Among " + Words.count(players, "player") + " of this studio, from " + units.length(distanceMm)
                + " half hole more than " + Words.inHundred(half) + "; you are in " + where + ".";
    }

    private static double quantile(double[] sorted, double share) {
        double place = share * (sorted.length - 1);
        int below = (int) place;
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /** The curves of players with at least so many putts, whose rates mean something. */
    public static List<MakeCurve> known(List<? extends Skill> players, int puttsMin) {
        return players.stream().filter(each -> each.putts() >= puttsMin).map(Skill::curve).toList();
    }
}
