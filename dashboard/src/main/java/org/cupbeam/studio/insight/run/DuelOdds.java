package org.cupbeam.studio.insight.run;

import org.cupbeam.studio.insight.words.Words;

/**
 * How a duel of two will end.
 *
 * @param first  the chance that the first one wins
 * @param second that the second one does
 * @param level  that both clear as many stations in as many attempts: their misses' finishes then decide
 */
public record DuelOdds(double first, double second, double level) {

    /**
     * Of two forecasts of the same drill.
     *
     * @param start stations that the second one is given beforehand
     */
    public static DuelOdds of(Forecast first, Forecast second, int start) {
        double[] sums = new double[3];
        double[][] one = first.chances();
        double[][] other = second.chances();
        // Per stations cleared, the chances summed up to a number of attempts: then each pairing is looked up.
        for (int cleared = 0; cleared <= first.stations(); cleared++) {
            int same = cleared - start;
            double fewer = 1 - second.atLeast(same);
            double more = second.atLeast(same + 1);
            double before = 0;
            double all = same >= 0 && same <= second.stations() ? second.cleared(same) : 0;
            for (int attempts = 0; attempts < Math.max(one.length, other.length); attempts++) {
                double mine = attempts < one.length ? one[attempts][cleared] : 0;
                double theirs = all > 0 && attempts < other.length ? other[attempts][same] : 0;
                sums[0] += mine * (fewer + Math.max(0, all - before - theirs));
                sums[1] += mine * (more + before);
                sums[2] += mine * theirs;
                before += theirs;
            }
        }
        return new DuelOdds(sums[0], sums[1], sums[2]);
    }

    /** The first one's chance where equal scores are shared out evenly. */
    public double even() {
        return first + level / 2;
    }

    /** Positive where the first score is the better one: more stations, then fewer attempts. */
    static int compare(int cleared, int attempts, int otherCleared, int otherAttempts) {
        return cleared != otherCleared ? Integer.compare(cleared, otherCleared)
                : Integer.compare(otherAttempts, attempts);
    }

    /** As a sentence. */
    public String inWords(String firstName, String secondName) {
        String favourite = even() >= 0.5 ? firstName : secondName;
        double chance = Math.max(even(), 1 - even());
        return chance < 0.525 ? firstName + " and " + secondName + " are an even match."
                : favourite + " should win " + Words.ofHundred(chance, "duels") + ".";
    }
}
