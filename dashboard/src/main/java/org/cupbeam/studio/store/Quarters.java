package org.cupbeam.studio.store;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.event.Data;
import org.cupbeam.event.Putt;
import org.cupbeam.studio.store.Stays.Place;
import org.jdbi.v3.core.Handle;

/** Keeps the counts of each lane's quarter hours. */
final class Quarters {
    static final long LENGTH_MS = 900_000;
    /** What of the pause before a quarter's first putt, and after its last, belongs to it; and of its neighbours'. */
    private static final String USED = """
            UPDATE lane_quarter SET used_ms = play_ms
                + coalesce((SELECT CASE WHEN lane_quarter.first_ms - b.last_ms BETWEEN 0 AND 300000
                    THEN lane_quarter.first_ms - CAST(lane_quarter.quarter AS BIGINT) * 900000 END FROM lane_quarter b
                    WHERE b.lane_id = lane_quarter.lane_id AND b.quarter = lane_quarter.quarter - 1), 0)
                + coalesce((SELECT CASE WHEN n.first_ms - lane_quarter.last_ms BETWEEN 0 AND 300000
                    THEN (CAST(lane_quarter.quarter AS BIGINT) + 1) * 900000 - lane_quarter.last_ms END FROM lane_quarter n
                    WHERE n.lane_id = lane_quarter.lane_id AND n.quarter = lane_quarter.quarter + 1), 0)
            WHERE lane_id = ? AND quarter BETWEEN ? AND ?
            """;

    /** @param inOrder whether the attempts came in the order of their times, as clocks that leap do not let them */
    private record Sum(int putts, int holed, long firstMs, long lastMs, long playMs, int emptied, boolean inOrder) {
        Sum plus(Sum later) {
            return new Sum(putts + later.putts, holed + later.holed, firstMs, later.lastMs,
                    playMs + later.playMs + playBetween(lastMs, later.firstMs), emptied + later.emptied,
                    inOrder && later.inOrder && later.firstMs >= lastMs);
        }

        Sum emptied(int more) {
            return new Sum(putts, holed, firstMs, lastMs, playMs, emptied + more, inOrder);
        }
    }

    private final Map<Place, Sum> added = new HashMap<>();
    private final Stays stays = new Stays();

    /**
     * Notes an attempt, to be written with the others of the same quarter.
     *
     * @param run null outside any run
     */
    void add(int lane, long atMs, Data.Attempt attempt, Integer run, long sequence) {
        boolean holed = attempt.putt().outcome() == Putt.Outcome.HOLED;
        Place place = new Place(lane, Math.floorDiv(atMs, LENGTH_MS));
        added.merge(place, new Sum(1, holed ? 1 : 0, atMs, atMs, 0, 0, true), Sum::plus);
        if (holed && run != null) {
            stays.add(run, attempt.play().visit(), sequence, place);
        }
    }

    /** Writes what was noted; the attempts themselves are written already. */
    void write(Handle h) {
        Stays.Settled settled = stays.settle(h);
        added.forEach((place, sum) -> {
            Optional<Sum> before = find(h, place);
            Sum now = before.map(earlier -> earlier.plus(sum)).orElse(sum).emptied(settled.first().getOrDefault(place, 0));
            if (!now.inOrder()) {
                count(h, place);
                return;
            }
            if (before.isEmpty()) {
                insert(h, place, now);
            } else {
                h.execute("UPDATE lane_quarter SET putts = ?, holed = ?, last_ms = ?, play_ms = ?, emptied = ? WHERE lane_id = ? "
                        + "AND quarter = ?", now.putts(), now.holed(), now.lastMs(), now.playMs(), now.emptied(), place.lane(),
                        place.quarter());
            }
            use(h, place);
        });
        added.clear();
        settled.again().forEach(place -> count(h, place));
    }

    /** Counts anew whatever an attempt that has changed, and is written so, has a part in. */
    static void recount(Handle h, int attempt) {
        Stays.of(h, attempt).forEach(place -> count(h, place));
    }

    /** Counts one quarter anew, after something in it has changed. */
    static void count(Handle h, Place place) {
        int lane = place.lane();
        long quarter = place.quarter();
        h.execute("DELETE FROM lane_quarter WHERE lane_id = ? AND quarter = ?", lane, quarter);
        h.execute("""
                INSERT INTO lane_quarter (lane_id, quarter, putts, holed, first_ms, last_ms, play_ms, emptied)
                SELECT ?, ?, count(*), sum(holed), min(at_ms), max(at_ms),
                    coalesce(sum(CASE WHEN pause_ms <= ? THEN pause_ms END), 0), sum(is_first)
                FROM (SELECT holed, at_ms, at_ms - lag(at_ms) OVER (ORDER BY at_ms) AS pause_ms,
                    CASE WHEN holed = 1 AND run_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM attempt b WHERE b.run_id = a.run_id
                        AND b.visit = a.visit AND b.holed = 1 AND b.counts = 1 AND b.sequence < a.sequence) THEN 1 ELSE 0 END AS is_first
                    FROM attempt a WHERE lane_id = ? AND at_ms >= ? AND at_ms < ? AND counts = 1) AS attempts
                HAVING count(*) > 0
                """, lane, quarter, LaneQuarter.LONGEST_PAUSE_MS, lane, quarter * LENGTH_MS, (quarter + 1) * LENGTH_MS);
        use(h, place);
    }

    private static void use(Handle h, Place place) {
        h.execute(USED, place.lane(), place.quarter() - 1, place.quarter() + 1);
    }

    /** What of the time between two putts in a row is play: all or nothing. */
    static long playBetween(long earlierMs, long laterMs) {
        long pauseMs = laterMs - earlierMs;
        return pauseMs >= 0 && pauseMs <= LaneQuarter.LONGEST_PAUSE_MS ? pauseMs : 0;
    }

    private static Optional<Sum> find(Handle h, Place place) {
        return h.select("SELECT putts, holed, first_ms, last_ms, play_ms, emptied FROM lane_quarter WHERE lane_id = ? "
                + "AND quarter = ?", place.lane(), place.quarter()).map((row, ctx) -> new Sum(row.getInt(1), row.getInt(2),
                row.getLong(3), row.getLong(4), row.getLong(5), row.getInt(6), true)).findOne();
    }

    private static void insert(Handle h, Place place, Sum sum) {
        h.execute("INSERT INTO lane_quarter (lane_id, quarter, putts, holed, first_ms, last_ms, play_ms, emptied) "
                        + "VALUES (?, ?, ?, ?, ?, ?, ?, ?)", place.lane(), place.quarter(), sum.putts(), sum.holed(),
                sum.firstMs(), sum.lastMs(), sum.playMs(), sum.emptied());
    }
}
