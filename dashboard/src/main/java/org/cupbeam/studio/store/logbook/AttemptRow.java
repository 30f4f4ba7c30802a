package org.cupbeam.studio.store.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Source;
import org.cupbeam.event.Tags;

/**
 * An attempt in the record.
 *
 * @param id       its number here
 * @param sequence of its event
 * @param atMs     when, ms since 1970
 * @param of       its place in a run; null outside any
 * @param counts   false once taken back or voided
 */
public record AttemptRow(int id, Source source, int lane, long sequence, long atMs, Of of, Putt putt, Tags tags,
                         GreenNow green, boolean counts) {
    /**
     * A place in a run.
     *
     * @param run       its number here
     * @param runName   what its lane calls it
     * @param player    the name; null once forgotten
     * @param drill     null where the run's beginning never came
     * @param stationMm from the hole
     */
    public record Of(int run, String runName, int playerId, String player, String drill, int station, double stationMm,
                     int visit, int ball, int ballsLeft) {
    }

    static final String COLUMNS = "a.id, s.name, l.name, j.name, a.lane_id, a.sequence, a.at_ms, a.run_id, r.name, "
            + "a.player_id, p.name, d.name, a.station, a.station_mm, a.visit, a.ball, a.balls_left, a.holed, a.finish_mm, "
            + "a.finish_sd_mm, a.finish_low_mm, a.finish_high_mm, a.overshoot, a.speed_at_hole_mm_s, a.pace_mm, a.rim, "
            + "a.entered, a.breaks, a.slope, a.stimp_ft, a.stimp_sd_ft, a.counts";
    static final String NAMES = " LEFT JOIN player p ON p.id = a.player_id LEFT JOIN drill d ON d.id = a.drill_id "
            + "LEFT JOIN journal j ON j.id = a.journal_id LEFT JOIN lane l ON l.id = a.lane_id "
            + "LEFT JOIN studio s ON s.id = l.studio_id ";

    static AttemptRow read(ResultSet row) throws SQLException {
        Columns in = new Columns(row);
        int id = in.whole();
        Source source = new Source(in.text(), in.text(), in.text());
        int lane = in.whole();
        long sequence = in.large();
        long atMs = in.large();
        Integer run = in.wholeOrNull();
        Of of = new Of(run == null ? 0 : run, in.text(), in.whole(), in.text(), in.text(), in.whole(), in.number(),
                in.whole(), in.whole(), in.whole());
        Putt putt = putt(in);
        Tags tags = new Tags(in.word(Tags.Break.class), in.word(Tags.Slope.class));
        GreenNow green = new GreenNow(in.number(), in.number(), Double.NaN);
        return new AttemptRow(id, source, lane, sequence, atMs, run == null ? null : of, putt, tags, green, in.flag());
    }

    private static Putt putt(Columns in) throws SQLException {
        return new Putt(in.flag() ? Putt.Outcome.HOLED : Putt.Outcome.MISSED, in.number(), in.number(), in.number(),
                in.number(), in.flag(), in.number(), in.number(), in.flag(),
                in.flag() ? Putt.How.ENTERED : Putt.How.SENSED);
    }
}
