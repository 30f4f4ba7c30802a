package org.cupbeam.studio.insight.turn;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.words.Words;

/**
 * A player's turning points.
 *
 * @param turns     in order; none where nothing clear changed
 * @param charts    that they were read from
 * @param stretches the Bayesian view beside them
 * @param putts     looked at
 */
public record Turns(List<Turn> turns, List<Chart> charts, Stretches stretches, int putts) {
    /** A player who does not change is given a false turn no more than once in so many putts. */
    public static final double PUTTS_TO_FALSE_TURN = 100_000;
    /** The charts together give such a player an alarm once in so many; most of these no stretch bears out afterwards. */
    public static final double PUTTS_TO_FALSE_ALARM = 40_000;
    /** Fewer putts than this cannot show a turn. */
    public static final int PUTTS_MIN = 500;
    private static final double CLEAR_SDS = 2.6;
    /** If makes moved by so many standard deviations, they say whether it is for the better. */
    private static final double DROPS_SDS = 2;
    private static final int NEAR_SESSIONS = 4;

    public Turns {
        turns = List.copyOf(turns);
        charts = List.copyOf(charts);
    }

    /**
     * From a player's series.
     *
     * @param series of makes first, then those of direction and pace where they were measured
     */
    public static Turns of(Sessions sessions, List<Series> series) {
        List<Chart> charts = new ArrayList<>();
        series.forEach(each -> charts.add(Chart.of(each, PUTTS_TO_FALSE_ALARM * series.size())));
        Stretches stretches = Stretches.of(series.size() > 1 ? series.subList(1, series.size()) : series);
        List<Turn> turns = new ArrayList<>();
        for (Cuts.Cut cut : Cuts.of(charts, series)) {
            turns.add(new Comparing(series, cut.from(), cut.change(), cut.to()).turn(sessions, cut, stretches));
        }
        return new Turns(turns, charts, stretches, sessions.shots().size());
    }

    /** As a sentence, where there is no turn to tell of. */
    public String inWords() {
        return !turns.isEmpty() ? Words.count(turns.size(), "turning point") + " in " + Words.count(putts, "putt") + "."
                : putts < PUTTS_MIN ? "Too early to tell of a turn: about " + (PUTTS_MIN - putts) + " more putts."
                : "No turning point: nothing in " + Words.count(putts, "putt") + " that chance would not do by itself.";
    }

    /** The stretches before and after a turn. */
    private record Comparing(List<Series> series, int from, int change, int to) {

        Turn turn(Sessions sessions, Cuts.Cut cut, Stretches stretches) {
            Map<Part, Estimate> changes = new EnumMap<>(Part.class);
            series.forEach(each -> changes.put(each.part(), moved(each)));
            List<Part> changed = changes.keySet().stream()
                    .filter(part -> part != Part.MAKES && Math.abs(sds(changes.get(part))) > CLEAR_SDS).toList();
            Estimate clearest = Math.abs(sds(changes.get(Part.MAKES))) > DROPS_SDS ? changes.get(Part.MAKES)
                    : Collections.max(changes.values(), Comparator.comparingDouble(each -> Math.abs(sds(each))));
            Series makes = series.get(0);
            return new Turn(change, sessions.atMs(change), cut.noticed(), makes.putts(change, cut.noticed() + 1),
                    changes, changed, clearest.value() > 0, share(makes, from, change), share(makes, change, to),
                    stretches.near(change, NEAR_SESSIONS));
        }

        private static double sds(Estimate moved) {
            return moved.value() / (moved.high() - moved.value()) * Estimate.SDS;
        }

        private Estimate moved(Series each) {
            Baseline before = level(each, from, change);
            Baseline after = level(each, change, to);
            return Estimate.normal(after.moved() - before.moved(), Math.hypot(before.sd(), after.sd()));
        }

        private static Estimate share(Series makes, int from, int to) {
            Baseline level = level(makes, from, to);
            double chance = makes.meanChance(level.moved());
            return Estimate.ofLogOdds(LogOdds.of(chance), level.sd());
        }

        private static Baseline level(Series each, int from, int to) {
            Baseline level = new Baseline(each);
            level.add(from, to);
            return level;
        }
    }
}
