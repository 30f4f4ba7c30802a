package org.cupbeam.studio.insight.run;

import java.util.Arrays;
import java.util.List;
import org.cupbeam.studio.insight.words.Words;

/**
 * How a player's runs of a drill will end, before the first putt.
 *
 * @param chances of each ending: by attempts used, from 0, and by stations cleared, from 0
 */
public record Forecast(double[][] chances) {
    /** Runs longer than this count as ended where they stand. */
    private static final int ATTEMPTS_MAX = 5000;
    /** Gauss and Hermite's rule of five points for a standard normal value. */
    private static final double[] FORMS = {-2.8569700138728, -1.3556261799742, 0, 1.3556261799742, 2.8569700138728};
    private static final double[] WEIGHTS = {0.0112574113277, 0.2220759220056, 0.5333333333333, 0.2220759220056,
            0.0112574113277};

    /**
     * Over all that the player may be, as far as the putts so far tell.
     *
     * @param rigLimitMm the limit that holds where the drill has none
     */
    public static Forecast of(DrillMap map, Contender contender, double rigLimitMm) {
        double limitMm = map.drill().limitMm(rigLimitMm);
        double[][] sum = new double[0][];
        for (int i = 0; i < FORMS.length; i++) {
            Chain chain = map.chain(contender.at(map.drill().stations(), limitMm, FORMS[i]));
            sum = added(sum, WEIGHTS[i], ended(map, chain));
        }
        return new Forecast(sum);
    }

    /** For exactly these odds. */
    static Forecast of(DrillMap map, List<Odds> byStation) {
        return new Forecast(ended(map, map.chain(byStation)));
    }

    /** The most stations that can be cleared. */
    public int stations() {
        return chances[0].length - 1;
    }

    /** The chance to clear exactly so many stations. */
    public double cleared(int stations) {
        return Arrays.stream(chances).mapToDouble(row -> row[stations]).sum();
    }

    /** The chance to clear so many stations or more. */
    public double atLeast(int stations) {
        double sum = 0;
        for (int more = Math.max(0, stations); more <= stations(); more++) {
            sum += cleared(more);
        }
        return sum;
    }

    /** Stations cleared on average. */
    public double meanCleared() {
        double sum = 0;
        for (int stations = 1; stations <= stations(); stations++) {
            sum += atLeast(stations);
        }
        return sum;
    }

    /** Attempts used on average. */
    public double meanAttempts() {
        double sum = 0;
        for (int attempts = 0; attempts < chances.length; attempts++) {
            sum += attempts * Arrays.stream(chances[attempts]).sum();
        }
        return sum;
    }

    /** The fewest stations so that clearing fewer has no more than this chance. */
    public int quantile(double chance) {
        int stations = 0;
        while (stations < stations() && 1 - atLeast(stations + 1) <= chance) {
            stations++;
        }
        return stations;
    }

    /** The furthest station that is cleared every other time or more often; 0 where none is. */
    public int evenStation() {
        int station = 0;
        while (station < stations() && atLeast(station + 1) >= 0.5) {
            station++;
        }
        return station;
    }

    /**
     * Where a run stands among all that might have been: the chance of a worse one, and half that of an equal one.
     *
     * @return 0 to 1, 1 the best
     */
    public double standing(int cleared, int attempts) {
        double sum = 0;
        for (int used = 0; used < chances.length; used++) {
            for (int stations = 0; stations <= stations(); stations++) {
                int better = DuelOdds.compare(cleared, attempts, stations, used);
                sum += better > 0 ? chances[used][stations] : better == 0 ? chances[used][stations] / 2 : 0;
            }
        }
        return sum;
    }

    /** What to expect, as a sentence. */
    public String inWords() {
        int low = quantile(0.1);
        int high = quantile(0.9);
        return "Most of your runs should clear " + (low == high ? Words.count(low, "station") : low + " to "
                + Words.count(high, "station")) + "; on average " + Words.decimal(meanCleared(), 1) + ".";
    }

    /** A run set against what was to be expected, as a sentence. */
    public String inWords(int cleared, int attempts) {
        double standing = standing(cleared, attempts);
        String run = Words.count(cleared, "station") + " in " + Words.count(attempts, "putt");
        return standing >= 0.5 ? run + ": better than " + Words.inHundred(standing) + " of your own runs would be."
                : run + ": " + Words.inHundred(1 - standing) + " of your own runs would be better.";
    }

    private static double[][] ended(DrillMap map, Chain chain) {
        Chain.Walk walk = chain.walk(0, ATTEMPTS_MAX);
        double[][] ended = walk.ended();
        for (int state = 0; state < map.size(); state++) {
            ended[ended.length - 1][map.cleared(state)] += walk.left()[state];
        }
        return ended;
    }

    private static double[][] added(double[][] sum, double weight, double[][] more) {
        double[][] both = Arrays.copyOf(sum.length >= more.length ? sum : more, Math.max(sum.length, more.length));
        for (int i = 0; i < both.length; i++) {
            both[i] = new double[more[0].length];
            for (int j = 0; j < both[i].length; j++) {
                both[i][j] = (i < sum.length ? sum[i][j] : 0) + (i < more.length ? weight * more[i][j] : 0);
            }
        }
        return both;
    }
}
