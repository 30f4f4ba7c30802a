package org.cupbeam.studio.store.logbook;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Sight;
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
 * @param scope  on lanes of these studios
 */
public record LogFilter(Integer player, String drill, Tags.Break breaks, Tags.Slope slope, Integer lane, Long fromMs,
                        Long toMs, Scope scope) {
    /** Everything. */
    public static final LogFilter ALL = new LogFilter(null, null, null, null, null, null, null, Scope.ALL);
    private static final int MOST_TERMS = 64;
    /** Of so many lanes each is asked by itself, so that an index has its newest; of more, all at once. */
    private static final int MOST_LANES = 64;

    public LogFilter player(int number) {
        return new LogFilter(number, drill, breaks, slope, lane, fromMs, toMs, scope);
    }

    public LogFilter drill(String name) {
        return new LogFilter(player, name, breaks, slope, lane, fromMs, toMs, scope);
    }

    public LogFilter tags(Tags.Break turning, Tags.Slope lying) {
        return new LogFilter(player, drill, turning, lying, lane, fromMs, toMs, scope);
    }

    public LogFilter lane(int number) {
        return new LogFilter(player, drill, breaks, slope, number, fromMs, toMs, scope);
    }

    public LogFilter between(Long from, Long to) {
        return new LogFilter(player, drill, breaks, slope, lane, from, to, scope);
    }

    public LogFilter within(Scope other) {
        return new LogFilter(player, drill, breaks, slope, lane, fromMs, toMs, other);
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
            return ofLanes(h, "r.lane_id", this::ofRun);
        }
        String seen = Sight.of(h, scope).lane("r.lane_id");
        List<Where> all = new ArrayList<>();
        h.select("SELECT id FROM drill WHERE name = ? ORDER BY id DESC LIMIT " + MOST_TERMS, drill).mapTo(Integer.class)
                .forEach(id -> all.add(ofRun().and("r.drill_id = ?", id).and(seen)));
        return all;
    }

    /** The conditions on an attempt, as {@code a}, whatever its run: a set for each lane likewise. */
    List<Where> ofAttempts(Handle h) {
        return ofLanes(h, "a.lane_id", () -> new Where().andIf("a.lane_id = ?", lane).andIf("a.at_ms >= ?", fromMs)
                .andIf("a.at_ms < ?", toMs));
    }

    private List<Where> ofLanes(Handle h, String column, Supplier<Where> conditions) {
        Sight sight = Sight.of(h, scope);
        if (sight.isAll() || player != null || lane != null || sight.lanes().isEmpty() || sight.lanes().size() > MOST_LANES) {
            return List.of(conditions.get().and(sight.lane(column)));
        }
        return sight.lanes().stream().map(each -> conditions.get().and(column + " = ?", each)).toList();
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
