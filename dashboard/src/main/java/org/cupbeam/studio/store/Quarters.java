package org.cupbeam.studio.store;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Keeps the counts of each lane's quarter hours. */
final class Quarters {
    static final long LENGTH_MS = 900_000;

    private record Key(int lane, long quarter) {
    }

    /** @param inOrder whether the attempts came in the order of their times, as clocks that leap do not let them */
    private record Sum(int putts, int holed, long firstMs, long lastMs, long playMs, boolean inOrder) {
        Sum plus(Sum later) {
            return new Sum(putts + later.putts, holed + later.holed, firstMs, later.lastMs,
                    playMs + later.playMs + playBetween(lastMs, later.firstMs),
                    inOrder && later.inOrder && later.firstMs >= lastMs);
        }
    }

    private final Map<Key, Sum> added = new HashMap<>();

    /** Notes an attempt, to be written with the others of the same quarter. */
    void add(int lane, long atMs, boolean holed) {
        added.merge(new Key(lane, Math.floorDiv(atMs, LENGTH_MS)), new Sum(1, holed ? 1 : 0, atMs, atMs, 0, true),
                Sum::plus);
    }

    /** Writes what was noted; the attempts themselves are written already. */
    void write(Handle h) {
        added.forEach((key, sum) -> {
            Optional<Sum> before = find(h, key);
            Sum now = before.map(earlier -> earlier.plus(sum)).orElse(sum);
            if (!now.inOrder()) {
                count(h, key.lane(), key.quarter());
            } else if (before.isEmpty()) {
                insert(h, key, now);
            } else {
                h.execute("UPDATE lane_quarter SET putts = ?, holed = ?, last_ms = ?, play_ms = ? WHERE lane_id = ? "
                        + "AND quarter = ?", now.putts(), now.holed(), now.lastMs(), now.playMs(), key.lane(),
                        key.quarter());
            }
        });
        added.clear();
    }

    /** Counts one quarter anew, after something in it has changed. */
    static void count(Handle h, int lane, long quarter) {
        h.execute("DELETE FROM lane_quarter WHERE lane_id = ? AND quarter = ?", lane, quarter);
        h.execute("""
                INSERT INTO lane_quarter (lane_id, quarter, putts, holed, first_ms, last_ms, play_ms)
                SELECT ?, ?, count(*), sum(holed), min(at_ms), max(at_ms),
                    coalesce(sum(CASE WHEN pause_ms <= ? THEN pause_ms END), 0)
                FROM (SELECT holed, at_ms, at_ms - lag(at_ms) OVER (ORDER BY at_ms) AS pause_ms FROM attempt
                    WHERE lane_id = ? AND at_ms >= ? AND at_ms < ? AND counts = 1) AS attempts
                HAVING count(*) > 0
                """, lane, quarter, LaneQuarter.LONGEST_PAUSE_MS, lane, quarter * LENGTH_MS, (quarter + 1) * LENGTH_MS);
    }

    /** What of the time between two putts in a row is play: all or nothing. */
    static long playBetween(long earlierMs, long laterMs) {
        long pauseMs = laterMs - earlierMs;
        return pauseMs >= 0 && pauseMs <= LaneQuarter.LONGEST_PAUSE_MS ? pauseMs : 0;
    }

    private static Optional<Sum> find(Handle h, Key key) {
        return h.select("SELECT putts, holed, first_ms, last_ms, play_ms FROM lane_quarter WHERE lane_id = ? "
                + "AND quarter = ?", key.lane(), key.quarter()).map((row, ctx) -> new Sum(row.getInt(1), row.getInt(2),
                row.getLong(3), row.getLong(4), row.getLong(5), true)).findOne();
    }

    private static void insert(Handle h, Key key, Sum sum) {
        h.execute("INSERT INTO lane_quarter (lane_id, quarter, putts, holed, first_ms, last_ms, play_ms) "
                        + "VALUES (?, ?, ?, ?, ?, ?, ?)", key.lane(), key.quarter(), sum.putts(), sum.holed(),
                sum.firstMs(), sum.lastMs(), sum.playMs());
    }
}
