package org.cupbeam.studio.store;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.studio.store.sums.PuttSums;
import org.jdbi.v3.core.Handle;

/**
 * Players' putts that count, counted by distance.
 *
 * @param tries from {@code distanceMm}; {@code made} of them
 */
public record PlayerTallies(double distanceMm, int tries, int made) {
    /** Of one player, the nearest first. @param toMs not included, ms since 1970 */
    public static List<PlayerTallies> between(Handle h, Sight sight, int player, long fromMs, long toMs) {
        return h.select("""
                SELECT station_mm, count(*), sum(holed) FROM attempt
                WHERE player_id = ? AND at_ms >= ? AND at_ms < ? AND counts = 1 AND station_mm IS NOT NULL AND %s
                GROUP BY station_mm ORDER BY station_mm
                """.formatted(sight.lane("lane_id")), player, fromMs, toMs).map((row, ctx) -> new PlayerTallies(row.getDouble(1), row.getInt(2), row.getInt(3)))
                .list();
    }

    /**
     * Of every player who putted since then, by the player's number, from the beginning of that quarter of a year. It looks at
     * every player since then: not for a page to ask each time.
     *
     * @param sinceMs ms since 1970
     */
    public static Map<Integer, List<PlayerTallies>> since(Handle h, long sinceMs) {
        Map<Integer, List<PlayerTallies>> all = new LinkedHashMap<>();
        h.select("""
                SELECT player_id, station_mm, sum(tries), sum(made) FROM player_season
                WHERE season >= ? AND station_mm > 0 AND station_mm < 1e6
                GROUP BY player_id, station_mm ORDER BY player_id, station_mm
                """, Math.floorDiv(sinceMs, PuttSums.SEASON_MS)).map((row, ctx) -> {
                    all.computeIfAbsent(row.getInt(1), player -> new ArrayList<>())
                            .add(new PlayerTallies(row.getDouble(2), row.getInt(3), row.getInt(4)));
                    return row.getInt(1);
                }).list();
        return all;
    }
}
