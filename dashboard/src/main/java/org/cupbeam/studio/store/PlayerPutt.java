package org.cupbeam.studio.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.cupbeam.event.Tags;
import org.jdbi.v3.core.Handle;

/**
 * A putt of a player's that counts, with what was measured of it. What is not known is NaN, or a tag null.
 *
 * @param atMs          when, ms since 1970
 * @param distanceMm    it was putted from; above 0 and below 1 km
 * @param finishMm      of a miss, where it came to rest
 * @param finishBelowMm of a miss without a finish, what it must lie below: only short of the first beam
 * @param paceMm        where it would have stopped had there been no hole
 */
public record PlayerPutt(long atMs, double distanceMm, boolean holed, double finishMm, double finishBelowMm, double paceMm,
                         double speedAtHoleMmPerS, boolean rim, Tags tags, double stimpFt, double stimpSdFt) {
    /** In place of null, which is slow to ask for, column by column; no putt rolls so far. */
    private static final double NONE = 1e300;
    /** A number for each pair of tags, so that a hundred thousand putts make no text of them. */
    private static final Tags[] TAGS = {
        Tags.NONE, tags(0, -1), tags(1, -1), tags(2, -1), tags(-1, 0), tags(0, 0), tags(1, 0), tags(2, 0),
        tags(-1, 1), tags(0, 1), tags(1, 1), tags(2, 1), tags(-1, 2), tags(0, 2), tags(1, 2), tags(2, 2)};
    private static final int FLAGS = 128;
    private static final int RIM = 2;
    private static final int BELOW = 4;
    private static final int FIRST_TAG = 8;
    private static final long STIMP_PLACE = 100_000;
    private static final double STIMP_STEPS = 1_000;
    /**
     * Most of the time goes by in fetching one column after another, so they are few: the time with the flags (holed, rim,
     * only an upper bound of the finish, tags) behind it, and the green's speed in thousandths of a foot with its standard
     * deviation behind it.
     */
    private static final String SELECT = """
            SELECT at_ms * 128 + holed + 2 * rim + CASE WHEN holed = 0 AND finish_mm IS NULL THEN 4 ELSE 0 END
                    + 8 * CASE breaks WHEN 'left-to-right' THEN 1 WHEN 'right-to-left' THEN 2 WHEN 'straight' THEN 3 ELSE 0 END
                    + 32 * CASE slope WHEN 'uphill' THEN 1 WHEN 'downhill' THEN 2 WHEN 'level' THEN 3 ELSE 0 END,
                station_mm, CASE WHEN holed = 0 THEN coalesce(finish_mm, finish_high_mm, 1e300) ELSE 1e300 END,
                coalesce(pace_mm, 1e300), coalesce(speed_at_hole_mm_s, 1e300),
                coalesce(CAST(round(stimp_ft * 1000) AS BIGINT) * 100000
                    + coalesce(CAST(round(stimp_sd_ft * 1000) AS BIGINT), 99999), -1)
            FROM attempt WHERE player_id = ? AND counts = 1 AND station_mm > 0 AND station_mm < 1e6 AND %s ORDER BY at_ms, id
            """;

    /**
     * All of a player's, in order of time.
     *
     * @param lanes on which; null for any, which one index alone answers
     * @param as    makes of each what is wanted of it
     */
    public static <T> List<T> all(Handle h, int player, List<Integer> lanes, Function<PlayerPutt, T> as) {
        return h.select(SELECT.formatted(lanes == null ? "1 = 1" : Scope.in("lane_id", lanes)), player).scanResultSet((rows, ctx) -> {
            List<T> all = new ArrayList<>();
            ResultSet row = rows.get();
            while (row.next()) {
                all.add(as.apply(of(row)));
            }
            return all;
        });
    }

    private static PlayerPutt of(ResultSet row) throws SQLException {
        long timeAndFlags = row.getLong(1);
        int flags = (int) Math.floorMod(timeAndFlags, (long) FLAGS);
        double finish = known(row.getDouble(3));
        boolean below = flags / BELOW % 2 == 1;
        long stimp = row.getLong(6);
        long sd = stimp % STIMP_PLACE;
        return new PlayerPutt(Math.floorDiv(timeAndFlags, (long) FLAGS), row.getDouble(2), flags % 2 == 1,
                below ? Double.NaN : finish, below ? finish : Double.NaN, known(row.getDouble(4)), known(row.getDouble(5)),
                flags / RIM % 2 == 1, TAGS[flags / FIRST_TAG], stimp < 0 ? Double.NaN : stimp / STIMP_PLACE / STIMP_STEPS,
                stimp < 0 || sd == STIMP_PLACE - 1 ? Double.NaN : sd / STIMP_STEPS);
    }

    private static double known(double value) {
        return value == NONE ? Double.NaN : value;
    }

    private static Tags tags(int breaks, int slope) {
        return new Tags(breaks < 0 ? null : Tags.Break.values()[breaks], slope < 0 ? null : Tags.Slope.values()[slope]);
    }
}
