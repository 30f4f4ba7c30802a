package org.cupbeam.studio.store.league;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.DrillJson;
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
    /**
     * The best runs of each player in each week, so many as count, by the drill's order of better; of runs that are level the
     * earlier one. A run is of the week in which it began.
     */
    public static List<Played> in(Handle h, League league, List<Span> weeks) {
        if (weeks.isEmpty()) {
            return List.of();
        }
        String rules = rules(DrillJson.text(league.drill()));
        List<Object> values = new ArrayList<>(List.of(rules.length(), rules));
        String sql = """
                WITH week (n, from_ms, to_ms) AS (VALUES %s), played AS (
                    SELECT w.n, r.id, r.player_id, r.lane_id, r.started_ms, r.stations_cleared, r.attempts, r.holed, r.mean_miss_mm,
                        row_number() OVER (PARTITION BY w.n, r.player_id ORDER BY r.stations_cleared DESC, r.attempts,
                            CASE WHEN r.attempts = r.holed THEN 0 ELSE coalesce(r.mean_miss_mm, 1e9) END, r.started_ms, r.id) AS nth,
                        count(*) OVER (PARTITION BY w.n, r.player_id) AS all_of_them
                    FROM week w JOIN run r ON r.started_ms >= w.from_ms AND r.started_ms < w.to_ms
                    WHERE r.drill_id IN (SELECT id FROM drill WHERE substr(terms, length(terms) - ? + 1) = ?)
                    AND r.stations_cleared IS NOT NULL AND r.ended_by <> 'stopped' AND %s AND %s AND %s)
                SELECT b.n, b.player_id, p.name, b.id, s.name, l.name, b.started_ms, b.stations_cleared, b.attempts, b.holed,
                    b.mean_miss_mm, b.all_of_them
                FROM played b JOIN player p ON p.id = b.player_id JOIN lane l ON l.id = b.lane_id JOIN studio s ON s.id = l.studio_id
                WHERE b.nth <= ? AND p.name IS NOT NULL ORDER BY b.n, b.player_id, b.nth
                """.formatted(weeks.stream().map(Played::row).collect(Collectors.joining(", ")),
                is("r.breaks", league.tags().breaks(), values), is("r.slope", league.tags().slope(), values),
                where(league, values));
        values.add(league.runs());
        return h.select(sql, values.toArray()).map((row, ctx) -> new Played(row.getInt(1), row.getInt(2), row.getString(3),
                row.getInt(4), row.getString(5), row.getString(6), row.getLong(7), row.getInt(8), row.getInt(9), row.getInt(10),
                row.getObject(11) == null ? Double.NaN : row.getDouble(11), row.getInt(12))).list();
    }

    /** Nothing but numbers of our own. */
    private static String row(Span week) {
        return "(" + week.number() + ", " + week.fromMs() + ", " + week.toMs() + ")";
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
