package org.cupbeam.studio.web;

import com.fasterxml.jackson.annotation.JsonRawValue;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.league.Heard;
import org.cupbeam.studio.league.LeagueSheets;
import org.cupbeam.studio.league.Remembered;
import org.cupbeam.studio.league.Sum;
import org.cupbeam.studio.league.Table;
import org.cupbeam.studio.league.Week;
import org.cupbeam.studio.league.Weeks;
import org.cupbeam.studio.store.league.Called;
import org.cupbeam.studio.store.league.LaneHeard;
import org.cupbeam.studio.store.league.League;
import org.cupbeam.studio.store.league.LeagueBook.Kept;
import org.cupbeam.studio.store.league.Played;
import org.cupbeam.studio.store.sheet.Sheet;
import org.cupbeam.studio.store.sums.RunDays;
import org.jdbi.v3.core.Handle;

/** A league as its page reads it: the table over all weeks, one week's, and which studios that week has yet to hear. */
final class LeagueSaid {
    /** The most rows of a table that are sent; the rest is in the export. */
    static final int MOST_ROWS = 500;
    private static final long BEFORE_MS = 4L * 7 * 24 * 3_600_000;

    /** A league's heading. @param now the week that goes on; 0 before the first, one more than there are after the last */
    record Head(int id, int version, String name, @JsonRawValue String drill, String breaks, String slope, String zone,
                List<WeekSaid> weeks, int now, int runs, Set<String> studios, String changedBy, long changedMs) {
    }

    /** @param from its Monday, {@code to} its Sunday */
    record WeekSaid(int number, String name, String from, String to) {
    }

    /** @param missMm null where a run's misses have no finish */
    record Figures(int runs, int cleared, int attempts, int holed, Double missMm) {
        static Figures of(Sum sum) {
            return sum == null ? null : new Figures(sum.runs(), sum.cleared(), sum.attempts(), sum.holed(),
                    Double.isInfinite(sum.missMm()) ? null : sum.missMm());
        }
    }

    /** @param weeks stations cleared in each week that has begun, from the first on; null where nothing was played */
    record Row(int place, boolean shared, int player, String name, Set<String> studios, Figures figures, List<Integer> weeks,
               List<Run> played) {
    }

    /** A run that counts, of {@code ofSoMany} that were played in its week. */
    record Run(int id, String studio, String lane, long atMs, int ofSoMany) {
    }

    /** @param heard null while the week goes on */
    record OneWeek(int number, int players, List<Row> rows, HeardSaid heard) {
    }

    record HeardSaid(int studios, List<Heard.Behind> behind) {
    }

    record Whole(Head league, int players, List<Row> rows, OneWeek week) {
    }

    private final Remembered remembered = new Remembered();
    private final LiveLanes lanes;
    private final Clock clock;

    LeagueSaid(LiveLanes lanes, Clock clock) {
        this.lanes = lanes;
        this.clock = clock;
    }

    Head head(Kept kept) {
        League league = kept.league();
        Weeks weeks = Weeks.of(league);
        return new Head(kept.id(), kept.version(), league.name(), DrillJson.text(league.drill()), word(league.tags().breaks()),
                word(league.tags().slope()), league.zone().getId(), IntStream.rangeClosed(1, league.weeks()).mapToObj(each ->
                new WeekSaid(each, weeks.name(each), weeks.monday(each).toString(), weeks.monday(each).plusDays(6).toString())).toList(),
                weeks.at(clock.millis()), league.runs(), league.inOrder(), kept.changedBy(), kept.changedMs());
    }

    /** @param weekOrNull a week's name, as 2026-W48; without one, that of now, or the last */
    Whole whole(Handle h, Kept kept, String weekOrNull) {
        Weeks weeks = Weeks.of(kept.league());
        long nowMs = clock.millis();
        int begun = Math.min(weeks.at(nowMs), weeks.number());
        int week = week(weeks, weekOrNull, begun);
        Map<Integer, List<Played>> runByRun = new HashMap<>(); // of the week that is shown so, which may have been read for its sums
        List<Week> all = remembered.weeks(kept, weeks.begun(nowMs), days(h, weeks), span -> {
            List<Played> best = Played.in(h, kept.league(), span);
            if (span.number() == week) {
                runByRun.put(week, best);
            }
            return best;
        });
        List<Played> ofWeek = week == 0 || week > begun ? List.of() : runByRun.computeIfAbsent(week, number ->
                Played.in(h, kept.league(), weeks.span(number)));
        Map<Integer, String> names = names(h, all);
        Table overAll = Table.of(all, names);
        return new Whole(head(kept), overAll.rows().size(), rows(overAll, begun, List.of()), week == 0 ? null : oneWeek(week,
                Table.of(all.stream().filter(each -> each.number() == week).toList(), names), ofWeek,
                weeks.toMs(week) > nowMs ? null : heard(h, kept.league(), weeks, week)));
    }

    /** For other programs. @param best finds the best runs of each player in a week */
    List<Sheet> sheets(Handle h, Kept kept, IntFunction<List<Played>> best) {
        Weeks weeks = Weeks.of(kept.league());
        List<Week> begun = remembered.weeks(kept, weeks.begun(clock.millis()), days(h, weeks), span ->
                Played.in(h, kept.league(), span));
        return LeagueSheets.of(weeks, begun, names(h, begun), best);
    }

    private static RunDays days(Handle h, Weeks weeks) {
        return RunDays.between(h, weeks.fromMs(1), weeks.toMs(weeks.number()));
    }

    private static OneWeek oneWeek(int number, Table table, List<Played> played, HeardSaid heard) {
        return new OneWeek(number, table.rows().size(), rows(table, 0, played), heard);
    }

    private static Map<Integer, String> names(Handle h, List<Week> weeks) {
        return Called.of(h, weeks.stream().flatMap(each -> each.standings().stream()).map(Week.Standing::player).collect(Collectors.toSet()));
    }

    private static int week(Weeks weeks, String nameOrNull, int otherwise) {
        if (nameOrNull == null) {
            return otherwise;
        }
        return IntStream.rangeClosed(1, weeks.number()).filter(each -> weeks.name(each).equals(nameOrNull)).findFirst()
                .orElseThrow(() -> Refusal.badRequest("Give a week of this league, as " + weeks.name(1) + "."));
    }

    private static List<Row> rows(Table table, int begun, List<Played> played) {
        Map<Integer, List<Run>> byPlayer = played.stream().collect(Collectors.groupingBy(Played::player, Collectors.mapping(each ->
                new Run(each.run(), each.studio(), each.lane(), each.atMs(), each.ofSoMany()), Collectors.toList())));
        return table.rows().stream().limit(MOST_ROWS).map(row -> new Row(row.place(), row.shared(), row.player(), row.name(),
                row.studios(), Figures.of(row.sum()), IntStream.rangeClosed(1, begun).mapToObj(each -> row.weeks().containsKey(each)
                ? (Integer) row.weeks().get(each).cleared() : null).toList(),
                byPlayer.getOrDefault(row.player(), List.of()))).toList();
    }

    private HeardSaid heard(Handle h, League league, Weeks weeks, int week) {
        List<LaneHeard> heard = LaneHeard.all(h, weeks.fromMs(week) - BEFORE_MS, weeks.toMs(week)).stream()
                .map(each -> each.upTo(saysNothingWaits(each))).toList();
        Heard of = Heard.of(heard, league.studios(), weeks.toMs(week));
        return new HeardSaid(of.studios(), of.behind());
    }

    /** When a lane last said, by a clock that can be believed, that nothing of its waits to be stored, ms; 0 for never. */
    private long saysNothingWaits(LaneHeard lane) {
        return lanes.find(new Topics(lane.studio(), lane.lane())).map(LiveLane::health).map(Health::report)
                .filter(report -> report.outbox() == 0 && report.clock() == Stamp.Clock.SYNCHRONISED)
                .map(report -> Math.min(report.time().toEpochMilli(), clock.millis())).orElse(0L);
    }

    private static String word(Worded wordOrNull) {
        return wordOrNull == null ? null : wordOrNull.word();
    }
}
