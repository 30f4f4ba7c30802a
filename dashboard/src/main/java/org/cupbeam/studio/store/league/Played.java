package org.cupbeam.studio.store.league;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cupbeam.drill.Score;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.DrillJson;
import org.cupbeam.studio.store.LaneName;
import org.cupbeam.studio.store.Sight;
import org.jdbi.v3.core.Handle;

/**
 * A run that may count in a league's week: played to its end, by somebody who has not been forgotten.
 *
 * @param week       from 1
 * @param atMs       when it began, ms since 1970
 * @param attempts   used, of which {@code holed} were holed
 * @param meanMissMm NaN where no miss has a finish
 * @param ofSoMany   runs that the player played in that week
 */
public record Played(int week, int player, String name, int run, String studio, String lane, long atMs, int cleared, int attempts,
                     int holed, double meanMissMm, int ofSoMany) {
    private record Run(int id, int player, int lane, long atMs, int cleared, int attempts, int holed, double meanMissMm) {
        Score score() {
            return new Score(cleared, attempts, attempts == holed ? 0 : Double.isNaN(meanMissMm) ? Double.POSITIVE_INFINITY : meanMissMm);
        }
    }

    private static final Comparator<Run> BETTER_FIRST = Comparator.comparing(Run::score).thenComparing(Run::atMs).thenComparing(Run::id);

    /**
     * The best runs of each player in a week, so many as count, by the drill's order of better; of runs that are level the
     * earlier one. A run is of the week in which it began. The best are picked here, since that is several times as fast as window
     * functions on SQLite.
     */
    public static List<Played> in(Handle h, League league, Span week) {
        String rules = rules(DrillJson.text(league.drill()));
        String drills = h.select("SELECT id FROM drill WHERE substr(terms, length(terms) - ? + 1) = ? ORDER BY id", rules.length(), rules)
                .mapTo(Integer.class).stream().map(String::valueOf).collect(Collectors.joining(", "));
        if (drills.isEmpty()) {
            return List.of();
        }
        Map<Integer, LaneName> lanes = LaneName.all(h, Sight.ALL).stream().collect(Collectors.toMap(LaneName::id, Function.identity()));
        Map<Integer, List<Run>> byPlayer = runs(h, league, drills, week).stream().filter(each -> lanes.containsKey(each.lane()))
                .collect(Collectors.groupingBy(Run::player, TreeMap::new, Collectors.toList())); // a lane that came up just now: the next time
        Map<Integer, String> names = Called.of(h, byPlayer.keySet());
        return byPlayer.entrySet().stream().filter(each -> names.containsKey(each.getKey())).flatMap(each -> best(each.getValue(), league.runs())
                .map(run -> played(week, run, names.get(run.player()), lanes.get(run.lane()), each.getValue().size()))).toList();
    }

    private static Stream<Run> best(Collection<Run> ofOne, int counting) {
        return ofOne.stream().sorted(BETTER_FIRST).limit(counting);
    }

    private static Played played(Span week, Run run, String name, LaneName on, int ofSoMany) {
        return new Played(week.number(), run.player(), name, run.id(), on.studio(), on.lane(), run.atMs(), run.cleared(), run.attempts(),
                run.holed(), run.meanMissMm(), ofSoMany);
    }

    /** @param drills numbers of ours, with commas */
    private static List<Run> runs(Handle h, League league, String drills, Span week) {
        List<Object> values = new ArrayList<>(List.of(week.fromMs(), week.toMs()));
        String sql = """
                SELECT r.id, r.player_id, r.lane_id, r.started_ms, r.stations_cleared, r.attempts, r.holed, r.mean_miss_mm FROM run r
                WHERE r.drill_id IN (%s) AND r.started_ms >= ? AND r.started_ms < ? AND r.stations_cleared IS NOT NULL
                AND r.ended_by <> 'stopped' AND %s AND %s AND %s
                """.formatted(drills, is("r.breaks", league.tags().breaks(), values), is("r.slope", league.tags().slope(), values),
                where(league, values));
        return h.select(sql, values.toArray()).map((row, ctx) -> {
            double missMm = row.getDouble(8);
            return new Run(row.getInt(1), row.getInt(2), row.getInt(3), row.getLong(4), row.getInt(5), row.getInt(6), row.getInt(7),
                    row.wasNull() ? Double.NaN : missMm);
        }).list();
    }

    /** A drill's terms from behind its name on, which stands first in them: what follows holds no text that anybody wrote. */
    static String rules(String terms) {
        return terms.substring(terms.lastIndexOf(",\"stations\":{"));
    }

    private static String is(String column, Worded wordOrNull, List<Object> values) {
        if (wordOrNull == null) {
            return "1 = 1";
        }
        values.add(wordOrNull.word());
        return column + " = ?";
    }

    private static String where(League league, List<Object> values) {
        if (league.everywhere()) {
            return "1 = 1";
        }
        values.addAll(league.inOrder());
        return "r.lane_id IN (SELECT l.id FROM lane l JOIN studio s ON s.id = l.studio_id WHERE s.name IN ("
                + "?, ".repeat(league.studios().size() - 1) + "?))";
    }
}
