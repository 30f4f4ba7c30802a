package org.cupbeam.studio.store.logbook;

import java.time.Instant;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.Putt;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.sheet.Sheet;
import org.jdbi.v3.core.Handle;

/**
 * The record as tables, for other programs and for another studio's import. Lengths in mm, speeds in mm/s, times in UTC.
 * A player who was forgotten has a number and no name.
 */
public final class LogSheets {
    static final String NUMBER = "player_number";
    private static final int AT_A_TIME = Page.MOST;

    private LogSheets() {
    }

    /** Everybody who is listed. */
    public static Sheet players(Store store, Scope scope) {
        return new Sheet("players", List.of("name", "hand", "units", "remark", "created"), rows(store,
                (h, after) -> Players.byName(h, Sight.of(h, scope), "", after, AT_A_TIME), LogSheets::player));
    }

    /** Runs by filter. */
    public static Sheet runs(Store store, LogFilter filter) {
        return new Sheet("runs", List.of("studio", "lane", "journal", "run", "duel", "order", "player", NUMBER, "drill",
                "terms", "break", "slope", "limit_mm", "started_sequence", "started", "ended_sequence", "ended", "ended_by",
                "stations_cleared", "attempts", "holed", "mean_miss_mm", "won"), rows(store,
                (h, after) -> Runs.page(h, filter, after, AT_A_TIME), LogSheets::run));
    }

    /** Attempts by filter. */
    public static Sheet attempts(Store store, LogFilter filter) {
        return new Sheet("attempts", List.of("studio", "lane", "journal", "sequence", "at", "run", "player", NUMBER, "drill",
                "station", "station_mm", "visit", "ball", "balls_left", "outcome", "finish_mm", "finish_sd_mm",
                "finish_low_mm", "finish_high_mm", "overshoot", "speed_at_hole_mm_s", "pace_mm", "rim", "how", "break",
                "slope", "stimp_ft", "stimp_sd_ft", "counts"), rows(store,
                (h, after) -> Attempts.page(h, filter, after, AT_A_TIME), LogSheets::attempt));
    }

    /** All notes that were not withdrawn, by what they are about. */
    public static Sheet notes(Store store, Scope scope) {
        return new Sheet("notes", List.of("at", "author", "words", "player", "studio", "lane", "journal", "run", "sequence"),
                rows(store, (h, after) -> Abouts.notes(h, Sight.of(h, scope), after), row -> row));
    }

    /** Everything that was put right afterwards. */
    public static Sheet changes(Store store, Scope scope) {
        return new Sheet("changes", List.of("what", "at", "by", "reason", "was", "became", "studio", "lane", "journal",
                "sequence", "run", "player", "said_by_event"), rows(store, (h, after) -> Abouts.changes(h, Sight.of(h, scope), after), row -> row));
    }

    /** All of the record that an import takes: a copy for another studio, or for the cupboard. */
    public static List<Sheet> book(Store store, LogFilter filter) {
        return List.of(players(store, filter.scope()), runs(store, filter), attempts(store, filter), notes(store, filter.scope()),
                changes(store, filter.scope()));
    }

    static List<Object> player(PlayerRow player) {
        return Arrays.asList(player.name(), player.hand(), player.units(), player.remark(), time(player.createdMs()));
    }

    static List<Object> run(RunRow run) {
        RunRow.Result end = run.result();
        return Arrays.asList(run.source().studio(), run.source().lane(), run.source().journal(), run.name(), run.duelName(),
                run.order(), run.player(), run.playerId(), run.drill(), run.terms(), word(run.tags().breaks()),
                word(run.tags().slope()), number(run.limitMm()), run.sequence(), time(run.startedMs()),
                end == null ? null : end.sequence(), end == null ? null : time(end.endedMs()),
                end == null ? null : word(end.endedBy()), end == null ? null : end.stationsCleared(),
                end == null ? null : end.attempts(), end == null ? null : end.holed(),
                end == null ? null : number(end.meanMissMm()), end == null ? null : end.won());
    }

    static List<Object> attempt(AttemptRow attempt) {
        AttemptRow.Of of = attempt.of();
        Putt putt = attempt.putt();
        return Arrays.asList(attempt.source().studio(), attempt.source().lane(), attempt.source().journal(),
                attempt.sequence(), time(attempt.atMs()), of == null ? null : of.runName(), of == null ? null : of.player(),
                of == null ? null : of.playerId(), of == null ? null : of.drill(), of == null ? null : of.station(),
                of == null ? null : number(of.stationMm()), of == null ? null : of.visit(), of == null ? null : of.ball(),
                of == null ? null : of.ballsLeft(), putt.outcome().word(), number(putt.finishMm()),
                number(putt.finishSdMm()), number(putt.lowMm()), number(putt.highMm()), putt.overshoot(),
                number(putt.speedAtHoleMmPerS()), number(putt.paceMm()), putt.rim(), putt.how().word(),
                word(attempt.tags().breaks()), word(attempt.tags().slope()), number(attempt.green().stimpFt()),
                number(attempt.green().stimpSdFt()), attempt.counts());
    }

    static String time(Long ms) {
        return ms == null ? null : Instant.ofEpochMilli(ms).toString();
    }

    private static String word(Worded constantOrNull) {
        return constantOrNull == null ? null : constantOrNull.word();
    }

    private static Double number(double value) {
        return Double.isNaN(value) ? null : value;
    }

    /** All pages' rows, a page in memory at a time, no connection held between them. */
    static <T> Iterable<List<Object>> rows(Store store, BiFunction<Handle, Cursor, Page<T>> pages,
                                           Function<T, List<Object>> row) {
        return () -> new Iterator<>() {
            private Page<T> page = ask(null);
            private int at;

            private Page<T> ask(Cursor after) {
                return store.read(h -> pages.apply(h, after));
            }

            @Override
            public boolean hasNext() {
                while (at == page.rows().size() && page.next() != null) {
                    page = ask(page.next());
                    at = 0;
                }
                return at < page.rows().size();
            }

            @Override
            public List<Object> next() {
                if (!hasNext()) {
                    throw new NoSuchElementException();
                }
                return row.apply(page.rows().get(at++));
            }
        };
    }
}
