package org.cupbeam.studio.store.sums;

import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * A table, or a column, that says no more than others do, and what it must be by these.
 *
 * @param what    its rows, in words
 * @param table   where it is
 * @param keys    its columns that tell one row from another; {@code columns} are all
 * @param plain   asks for these as they must be
 * @param anew    statements that make it anew
 */
public record Sum(String what, String table, String keys, String columns, String plain, List<String> anew) {
    private static final String USE = """
            SELECT lane_id, quarter, putts, holed, first_ms, last_ms, play_ms, play_ms
                + CASE WHEN first_ms - lag(last_ms) OVER lane BETWEEN 0 AND 300000
                    THEN first_ms - CAST(quarter AS BIGINT) * 900000 ELSE 0 END
                + CASE WHEN lead(first_ms) OVER lane - last_ms BETWEEN 0 AND 300000
                    THEN (CAST(quarter AS BIGINT) + 1) * 900000 - last_ms ELSE 0 END AS used_ms, emptied
            FROM (SELECT lane_id, quarter, count(*) AS putts, sum(holed) AS holed, min(at_ms) AS first_ms, max(at_ms) AS last_ms,
                    coalesce(sum(CASE WHEN pause_ms <= 300000 THEN pause_ms END), 0) AS play_ms,
                    sum(CASE WHEN holed = 1 AND run_id IS NOT NULL AND place = 1 THEN 1 ELSE 0 END) AS emptied
                FROM (SELECT lane_id, holed, at_ms, run_id, quarter,
                        at_ms - lag(at_ms) OVER (PARTITION BY lane_id, quarter ORDER BY at_ms) AS pause_ms,
                        row_number() OVER (PARTITION BY run_id, visit, holed ORDER BY sequence) AS place
                    FROM (SELECT lane_id, holed, at_ms, run_id, visit, sequence, %s AS quarter FROM attempt WHERE counts = 1) AS putted
                ) AS placed GROUP BY lane_id, quarter) AS counted
            WINDOW lane AS (PARTITION BY lane_id ORDER BY quarter)
            """.formatted(part("at_ms", 900_000));
    private static final String RUNS = " FROM run r JOIN lane l ON l.id = r.lane_id ";
    private static final String WHOSE = "coalesce(t.player_id, (SELECT r.player_id FROM run r WHERE r.id = t.run_id), "
            + "(SELECT a.player_id FROM attempt a WHERE a.id = t.attempt_id))";

    /** All there are, those that are made of others after them. */
    public static final List<Sum> ALL = List.of(
            table("quarter hours of use", "lane_quarter", "lane_id, quarter", "putts, holed, first_ms, last_ms, play_ms, used_ms, emptied", USE),
            table("sums of players' runs", "player_tally", "player_id, studio_id", "runs, first_ms, last_ms",
                    "SELECT r.player_id, l.studio_id, count(*), min(r.started_ms), max(r.started_ms)" + RUNS + "GROUP BY 1, 2"),
            table("sums of players' days", "player_day", "day, studio_id, player_id", "runs",
                    "SELECT " + part("r.started_ms", RunSums.DAY_MS) + ", l.studio_id, r.player_id, count(*)" + RUNS + "GROUP BY 1, 2, 3"),
            table("sums of players' putts", "player_season", "season, studio_id, player_id, station_mm", "tries, made",
                    "SELECT " + part("a.at_ms", PuttSums.SEASON_MS) + ", l.studio_id, a.player_id, a.station_mm, count(*), sum(a.holed) "
                            + "FROM attempt a JOIN lane l ON l.id = a.lane_id WHERE a.counts = 1 AND a.player_id IS NOT NULL "
                            + "AND a.station_mm IS NOT NULL GROUP BY 1, 2, 3, 4"),
            column("players that notes are about", "note"), column("players that changes are about", "amendment"));

    public Sum {
        anew = List.copyOf(anew);
    }

    private static Sum table(String what, String table, String keys, String others, String plain) {
        String columns = keys + ", " + others;
        return new Sum(what, table, keys, columns, plain,
                List.of("DELETE FROM " + table, "INSERT INTO " + table + " (" + columns + ") " + plain));
    }

    private static Sum column(String what, String table) {
        return new Sum(what, table, "id", "id, of_player", "SELECT t.id, " + WHOSE + " FROM " + table + " t",
                List.of("UPDATE " + table + " SET of_player = " + WHOSE.replace("t.", table + ".")));
    }

    /** Rounded down, as a clock that was set back in 1970 needs: SQL divides towards zero. */
    private static String part(String ms, long lengthMs) {
        return "(%1$s - (%1$s %% %2$d + %2$d) %% %2$d) / %2$d".formatted(ms, lengthMs);
    }

    /** How many rows are not there as they must be, or are there and must not. */
    public long differences(Handle h) {
        return h.createQuery("WITH kept (" + columns + ") AS (SELECT " + columns + " FROM " + table + "), plain (" + columns + ") AS ("
                + plain + ") SELECT count(*) FROM (SELECT " + keys + " FROM (SELECT * FROM plain EXCEPT SELECT * FROM kept) AS due "
                + "UNION SELECT " + keys + " FROM (SELECT * FROM kept EXCEPT SELECT * FROM plain) AS too_many) AS differing")
                .mapTo(Long.class).one();
    }

    /** Makes it anew; within a transaction. @return how many rows it has */
    public long make(Handle h) {
        anew.forEach(h::execute);
        return h.createQuery("SELECT count(*) FROM " + table).mapTo(Long.class).one();
    }
}
