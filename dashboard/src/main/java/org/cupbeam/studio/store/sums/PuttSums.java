package org.cupbeam.studio.store.sums;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Keeps the sums of players' putts that count, by distance and quarter of a year. */
public final class PuttSums {
    /** How long such a quarter is, as the table {@code player_season} has it: 91 days. */
    public static final long SEASON_MS = 91L * 86_400_000;

    private record Key(long season, int studio, int player, double stationMm) {
    }

    /** Where the lane's studio is not looked up yet. */
    private record Putted(long season, int lane, int player, double stationMm) {
    }

    private record Sum(int tries, int made) {
        Sum plus(Sum other) {
            return new Sum(tries + other.tries, made + other.made);
        }
    }

    private static final String COUNTED = "SELECT (a.at_ms - (a.at_ms % 7862400000 + 7862400000) % 7862400000) / 7862400000, l.studio_id, "
            + "a.player_id, a.station_mm, count(*), sum(a.holed) FROM attempt a JOIN lane l ON l.id = a.lane_id "
            + "WHERE a.id IN (SELECT id FROM attempt WHERE #which) AND a.counts = 1 AND a.player_id IS NOT NULL AND a.station_mm IS NOT NULL "
            + "GROUP BY 1, 2, 3, 4";

    private final Map<Putted, Sum> added = new HashMap<>();

    /** Notes an attempt of a player's that counts, to be written with others. */
    public void add(int lane, int player, long atMs, double stationMm, boolean holed) {
        if (!Double.isNaN(stationMm)) {
            added.merge(new Putted(Math.floorDiv(atMs, SEASON_MS), lane, player, stationMm), new Sum(1, holed ? 1 : 0), Sum::plus);
        }
    }

    /** Writes what was noted. */
    public void write(Handle h) {
        if (added.isEmpty()) {
            return;
        }
        Map<Integer, Integer> studios = studios(h, added.keySet().stream().map(Putted::lane).distinct().toList());
        Map<Key, Sum> more = new HashMap<>();
        added.forEach((of, sum) -> more.merge(new Key(of.season(), studios.get(of.lane()), of.player(), of.stationMm()), sum, Sum::plus));
        added.clear();
        add(h, more);
    }

    /**
     * Changes attempts that are there: whose they are, when they were, or whether they count.
     *
     * @param which a condition on the table {@code attempt}, which the same ones meet before and after the change
     */
    public static void around(Handle h, Runnable change, String which, Object... values) {
        Map<Key, Sum> more = new HashMap<>();
        count(h, -1, which, values, more);
        change.run();
        count(h, 1, which, values, more);
        more.values().removeIf(sum -> sum.tries() == 0 && sum.made() == 0);
        add(h, more);
    }

    private static void count(Handle h, int times, String which, Object[] values, Map<Key, Sum> more) {
        h.select(COUNTED.replace("#which", which), values).map((row, ctx) -> Map.entry(new Key(row.getLong(1), row.getInt(2), row.getInt(3),
                row.getDouble(4)), new Sum(times * row.getInt(5), times * row.getInt(6))))
                .forEach(each -> more.merge(each.getKey(), each.getValue(), Sum::plus));
    }

    private static void add(Handle h, Map<Key, Sum> more) {
        if (more.isEmpty()) {
            return;
        }
        PreparedBatch batch = h.prepareBatch("""
                INSERT INTO player_season (season, studio_id, player_id, station_mm, tries, made) VALUES (?, ?, ?, ?, ?, ?)
                ON CONFLICT (season, studio_id, player_id, station_mm) DO UPDATE SET tries = player_season.tries + excluded.tries,
                    made = player_season.made + excluded.made
                """);
        more.forEach((key, sum) -> batch.add(key.season(), key.studio(), key.player(), key.stationMm(), sum.tries(), sum.made()));
        batch.execute();
        more.forEach((key, sum) -> {
            if (sum.tries() < 0) {
                h.execute("DELETE FROM player_season WHERE season = ? AND studio_id = ? AND player_id = ? AND station_mm = ? AND tries = 0",
                        key.season(), key.studio(), key.player(), key.stationMm());
            }
        });
    }

    private static Map<Integer, Integer> studios(Handle h, List<Integer> lanes) {
        return h.createQuery("SELECT id, studio_id FROM lane WHERE id IN (<lanes>)").bindList("lanes", lanes)
                .map((row, ctx) -> Map.entry(row.getInt(1), row.getInt(2))).list().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }
}
