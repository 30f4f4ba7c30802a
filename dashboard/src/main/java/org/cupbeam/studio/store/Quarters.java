package org.cupbeam.studio.store;

import java.util.HashMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/** Keeps the counts of each lane's quarter hours. */
final class Quarters {
    static final long LENGTH_MS = 900_000;

    private record Key(int lane, long quarter) {
    }

    private record Sum(int putts, int holed, long firstMs, long lastMs) {
        Sum plus(Sum other) {
            return new Sum(putts + other.putts, holed + other.holed, Math.min(firstMs, other.firstMs),
                    Math.max(lastMs, other.lastMs));
        }
    }

    private final Map<Key, Sum> added = new HashMap<>();

    /** Notes an attempt, to be written with the others of the same quarter. */
    void add(int lane, long atMs, boolean holed) {
        added.merge(new Key(lane, Math.floorDiv(atMs, LENGTH_MS)), new Sum(1, holed ? 1 : 0, atMs, atMs), Sum::plus);
    }

    void write(Handle h) {
        added.forEach((key, sum) -> h.execute("""
                INSERT INTO lane_quarter (lane_id, quarter, putts, holed, first_ms, last_ms) VALUES (?, ?, ?, ?, ?, ?)
                ON CONFLICT (lane_id, quarter) DO UPDATE SET
                    putts = lane_quarter.putts + excluded.putts,
                    holed = lane_quarter.holed + excluded.holed,
                    first_ms = CASE WHEN excluded.first_ms < lane_quarter.first_ms
                               THEN excluded.first_ms ELSE lane_quarter.first_ms END,
                    last_ms = CASE WHEN excluded.last_ms > lane_quarter.last_ms
                              THEN excluded.last_ms ELSE lane_quarter.last_ms END
                """, key.lane(), key.quarter(), sum.putts(), sum.holed(), sum.firstMs(), sum.lastMs()));
        added.clear();
    }

    /** Counts one quarter anew, after something in it has changed. */
    static void count(Handle h, int lane, long quarter) {
        h.execute("DELETE FROM lane_quarter WHERE lane_id = ? AND quarter = ?", lane, quarter);
        h.execute("""
                INSERT INTO lane_quarter (lane_id, quarter, putts, holed, first_ms, last_ms)
                SELECT ?, ?, count(*), sum(holed), min(at_ms), max(at_ms) FROM attempt
                WHERE lane_id = ? AND at_ms >= ? AND at_ms < ? AND counts = 1 HAVING count(*) > 0
                """, lane, quarter, lane, quarter * LENGTH_MS, (quarter + 1) * LENGTH_MS);
    }
}
