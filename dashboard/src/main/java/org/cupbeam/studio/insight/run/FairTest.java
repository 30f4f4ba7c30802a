package org.cupbeam.studio.insight.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Supply;
import org.cupbeam.studio.insight.words.Words;

/**
 * The number of balls, and the rule, that makes a drill a fair test: an even chance to clear a station.
 *
 * @param station that should be cleared every other time
 * @param best    with the drill's own supply of balls, the number that comes nearest to that
 * @param options all that were tried, the fairest first, the other supply among them
 */
public record FairTest(int station, Option best, List<Option> options) {
    /** A run of six stations is long enough to be a test, and short enough to be repeated. */
    public static final int STATION = 6;
    private static final int BALLS_MAX = 12;

    /**
     * The drill with so many balls.
     *
     * @param chance to clear the station
     */
    public record Option(Drill drill, double chance) {
        private double unfair() {
            return Math.abs(chance - 0.5);
        }
    }

    public FairTest {
        options = List.copyOf(options);
    }

    /**
     * Tries numbers of balls with either supply; empty where the drill has too many states.
     *
     * @param station    to be cleared every other time; the drill's last where it has fewer
     * @param rigLimitMm the limit that holds where the drill has none
     */
    public static Optional<FairTest> of(Drill drill, int station, Contender contender, double rigLimitMm) {
        int target = Math.min(station, drill.stations().count());
        List<Option> options = new ArrayList<>();
        for (Supply supply : Supply.values()) {
            tryBalls(drill, supply, target, contender, rigLimitMm, options);
        }
        options.sort(Comparator.comparingDouble(Option::unfair));
        return options.stream().filter(each -> each.drill.supply() == drill.supply()).findFirst()
                .map(best -> new FairTest(target, best, options));
    }

    /** More and more balls, until the chance is even or better: each ball makes it higher. */
    private static void tryBalls(Drill drill, Supply supply, int target, Contender contender, double rigLimitMm,
                                 List<Option> options) {
        for (int balls = drill.holed(); balls <= Math.max(BALLS_MAX, drill.holed()); balls++) {
            Drill tried = with(drill, balls, supply);
            Optional<DrillMap> map = DrillMap.of(tried, rigLimitMm);
            if (map.isEmpty()) {
                return;
            }
            double chance = Forecast.of(map.get(), contender, rigLimitMm).atLeast(target);
            options.add(new Option(tried, chance));
            if (chance >= 0.5) {
                return;
            }
        }
    }

    /** As a sentence. */
    public String inWords() {
        return "With " + Words.count(best.drill.balls(), "ball") + " you clear station " + station + " in "
                + Words.ofHundred(best.chance, "runs") + ": " + (best.unfair() < 0.1 ? "a fair test."
                : best.chance > 0.5 ? "even so an easy one." : "even so a hard one.");
    }

    private static Drill with(Drill drill, int balls, Supply supply) {
        return new Drill(drill.name(), drill.stations(), balls, supply, drill.holed(), drill.limitMm(), drill.penalty(),
                drill.turns());
    }
}
