package org.cupbeam.studio.store;

import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** What lanes did in the quarter hours of a stretch of time, as the store has counted it. */
public final class LaneQuarter implements Played {
    /** How long a quarter is. */
    public static final long LENGTH_MS = Quarters.LENGTH_MS;
    /** A lane where nobody has putted for longer was not in play meanwhile. */
    public static final long LONGEST_PAUSE_MS = 300_000;
    private static final String IN_IT = " FROM lane_quarter WHERE quarter >= ? AND quarter < ? ";

    private final Handle h;
    private final String seen;
    private final long from;
    private final long to;

    private LaneQuarter(Handle h, Sight sight, long from, long to) {
        this.h = h;
        this.seen = "AND " + sight.lane("lane_id") + " ";
        this.from = from;
        this.to = to;
    }

    /** The quarters of lanes that are seen that begin in a stretch of time, its end not included; to be asked while the connection is at hand. */
    public static Played between(Handle h, Sight sight, long fromMs, long toMs) {
        return new LaneQuarter(h, sight, firstFrom(fromMs), firstFrom(toMs));
    }

    @Override
    public List<InQuarter> quarters() {
        return h.select("SELECT quarter, sum(used_ms), sum(putts), sum(holed)" + IN_IT + seen + "GROUP BY quarter ORDER BY quarter", from, to)
                .map((row, ctx) -> new InQuarter(row.getLong(1), row.getLong(2), row.getInt(3), row.getInt(4))).list();
    }

    @Override
    public List<OnLane> lanes() {
        return h.select("SELECT lane_id, sum(used_ms), sum(putts), sum(holed)" + IN_IT + seen + "GROUP BY lane_id", from, to)
                .map((row, ctx) -> new OnLane(row.getInt(1), row.getLong(2), row.getInt(3), row.getInt(4))).list();
    }

    @Override
    public List<OnLane> lanesIn(Collection<Long> quarters) {
        return quarters.isEmpty() ? List.of()
                : h.createQuery("SELECT lane_id, sum(used_ms), sum(putts), sum(holed) FROM lane_quarter WHERE " + in(quarters)
                        + seen + "GROUP BY lane_id")
                .map((row, ctx) -> new OnLane(row.getInt(1), row.getLong(2), row.getInt(3), row.getInt(4))).list();
    }

    @Override
    public List<Part> parts(Collection<Long> quarters) {
        return quarters.isEmpty() ? List.of()
                : h.createQuery("SELECT lane_id, quarter, used_ms FROM lane_quarter WHERE " + in(quarters) + seen)
                .map((row, ctx) -> new Part(row.getInt(1), row.getLong(2), row.getLong(3))).list();
    }

    private static String in(Collection<Long> quarters) {
        return quarters.stream().map(String::valueOf).collect(Collectors.joining(", ", "quarter IN (", ") "));
    }

    static long firstFrom(long ms) {
        return -Math.floorDiv(-ms, LENGTH_MS);
    }
}
