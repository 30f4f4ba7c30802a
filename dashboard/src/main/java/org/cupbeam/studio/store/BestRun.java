package org.cupbeam.studio.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Tags;
import org.jdbi.v3.core.Handle;

/**
 * The best run of a drill, by the drill's own order of merit: stations cleared, then fewer attempts, then the nearer
 * misses.
 *
 * @param player     null once forgotten
 * @param meanMissMm NaN where no miss has a finish
 * @param endedMs    when, ms since 1970
 */
public record BestRun(String player, int stationsCleared, int attempts, int holed, double meanMissMm, long endedMs) {

    /** The best run that was played to its end of this very drill, with these tags, on any lane of a studio. */
    public static Optional<BestRun> of(Handle h, String studio, Drill drill, Tags tags) {
        String lane = Sight.of(h, Scope.of(List.of(studio))).lane("r.lane_id");
        List<Object> values = new ArrayList<>(List.of(DrillJson.text(drill)));
        String sql = """
                SELECT p.name, r.stations_cleared, r.attempts, r.holed, r.mean_miss_mm, r.ended_ms FROM run r
                JOIN player p ON p.id = r.player_id
                WHERE r.drill_id = (SELECT id FROM drill WHERE terms = ?) AND %s AND %s AND %s
                AND r.stations_cleared IS NOT NULL AND r.ended_by <> 'stopped'
                ORDER BY r.stations_cleared DESC, r.attempts,
                    CASE WHEN r.attempts = r.holed THEN 0 ELSE coalesce(r.mean_miss_mm, 1e9) END, r.ended_ms LIMIT 1
                """.formatted(is("r.breaks", tags.breaks(), values), is("r.slope", tags.slope(), values), lane);
        return h.select(sql, values.toArray()).map((row, ctx) -> new BestRun(row.getString(1), row.getInt(2),
                row.getInt(3), row.getInt(4), row.getObject(5) == null ? Double.NaN : row.getDouble(5),
                row.getLong(6))).findOne();
    }

    private static String is(String column, Worded wordOrNull, List<Object> values) {
        if (wordOrNull == null) {
            return column + " IS NULL";
        }
        values.add(Rows.word(wordOrNull));
        return column + " = ?";
    }
}
