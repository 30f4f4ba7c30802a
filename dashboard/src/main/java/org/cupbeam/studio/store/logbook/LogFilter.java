package org.cupbeam.studio.store.logbook;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.Tags;
import org.jdbi.v3.core.Handle;

/**
 * Which runs, and attempts of which runs. Null asks for nothing in particular.
 *
 * @param player the player's number
 * @param drill  the drill's name, whatever its terms
 * @param breaks the run's tag; slope likewise
 * @param lane   the lane's number
 * @param fromMs from then on, ms since 1970
 * @param toMs   before then
 */
public record LogFilter(Integer player, String drill, Tags.Break breaks, Tags.Slope slope, Integer lane, Long fromMs,
                        Long toMs) {
    /** Everything. */
    public static final LogFilter ALL = new LogFilter(null, null, null, null, null, null, null);
    private static final int MOST_TERMS = 64;

    public LogFilter player(int number) {
        return new LogFilter(number, drill, breaks, slope, lane, fromMs, toMs);
    }

    public LogFilter drill(String name) {
        return new LogFilter(player, name, breaks, slope, lane, fromMs, toMs);
    }

    public LogFilter tags(Tags.Break turning, Tags.Slope lying) {
        return new LogFilter(player, drill, turning, lying, lane, fromMs, toMs);
    }

    public LogFilter lane(int number) {
        return new LogFilter(player, drill, breaks, slope, number, fromMs, toMs);
    }

    public LogFilter between(Long from, Long to) {
        return new LogFilter(player, drill, breaks, slope, lane, from, to);
    }

    /** Whether attempts outside any run could be meant, too. */
    boolean anyRun() {
        return player == null && drill == null && breaks == null && slope == null;
    }

    /**
     * The conditions on a run, as {@code r}: one set for each set of terms that the drill was played with, so that each
     * can be answered from an index.
     */
    List<Where> ofRuns(Handle h) {
        if (drill == null) {
            return List.of(ofRun());
        }
        List<Where> all = new ArrayList<>();
        h.select("SELECT id FROM drill WHERE name = ? ORDER BY id DESC LIMIT " + MOST_TERMS, drill).mapTo(Integer.class)
                .forEach(id -> all.add(ofRun().and("r.drill_id = ?", id)));
        return all;
    }

    private Where ofRun() {
        return new Where().andIf("r.player_id = ?", player).andIf("r.breaks = ?", word(breaks))
                .andIf("r.slope = ?", word(slope)).andIf("r.lane_id = ?", lane).andIf("r.started_ms >= ?", fromMs)
                .andIf("r.started_ms < ?", toMs);
    }

    private static String word(Worded constantOrNull) {
        return constantOrNull == null ? null : constantOrNull.word();
    }
}
