package org.cupbeam.studio.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.studio.store.PlayerTallies;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.logbook.AttemptRow;
import org.cupbeam.studio.store.logbook.Attempts;
import org.cupbeam.studio.store.logbook.Cursor;
import org.cupbeam.studio.store.logbook.LogFilter;
import org.cupbeam.studio.store.logbook.NoteRow;
import org.cupbeam.studio.store.logbook.Notes;
import org.cupbeam.studio.store.logbook.Page;
import org.cupbeam.studio.store.logbook.PlayerRow;
import org.cupbeam.studio.store.logbook.RunRow;
import org.cupbeam.studio.store.logbook.Runs;
import org.cupbeam.studio.web.LogbookSaid.Note;
import org.cupbeam.studio.web.LogbookSaid.Player;
import org.cupbeam.studio.web.LogbookSaid.Putt;
import org.cupbeam.studio.web.LogbookSaid.Run;
import org.jdbi.v3.core.Handle;

/**
 * One player's day, for the report: the runs begun on it with all their putts, the coach's notes of the day, and what the
 * player holed from each distance in the time before.
 *
 * @param days      on which the player began a run, the latest first; of the latest 1,000 runs
 * @param runs      the latest first
 * @param putts     the first first
 * @param usual     before, by distance; {@code usualDays} how long before at most, {@code usualPutts} how many
 */
record SessionReport(String zone, Player player, String day, List<String> days, List<Run> runs, List<Putt> putts,
                     List<Note> notes, List<Usual> usual, int usualDays, int usualPutts) {
    private static final int BEFORE_DAYS = 90;
    private static final int MOST_PUTTS = 5_000;

    /** What was holed of so many putts from a distance. */
    record Usual(double stationMm, int putts, int holed) {
    }

    /** @param dayOrNull the day; null for the last that the player played on, or today */
    static SessionReport of(Handle h, Sight sight, PlayerRow player, LocalDate dayOrNull, ZoneId zone, Instant now) {
        LogFilter all = LogFilter.ALL.player(player.id()).within(sight.scope());
        List<LocalDate> days = Runs.begunMs(h, sight, player.id(), Page.MOST).stream().map(ms -> day(ms, zone))
                .distinct().toList();
        LocalDate day = dayOrNull != null ? dayOrNull : days.isEmpty() ? day(now.toEpochMilli(), zone) : days.get(0);
        long from = LogbookFilter.startMs(day, zone);
        long to = LogbookFilter.startMs(day.plusDays(1), zone);
        List<RunRow> runs = Runs.page(h, all.between(from, to), null, Page.MOST).rows();
        List<AttemptRow> putts = new ArrayList<>(attempts(h, all.between(from, to)));
        putts.sort(inOrder(runs));
        List<Usual> usual = PlayerTallies.between(h, sight, player.id(), LogbookFilter.startMs(day.minusDays(BEFORE_DAYS), zone), from)
                .stream().map(each -> new Usual(each.distanceMm(), each.tries(), each.made())).toList();
        return new SessionReport(zone.getId(), Player.of(player), day.toString(),
                days.stream().map(LocalDate::toString).toList(), runs.stream().map(Run::of).toList(),
                putts.stream().map(putt -> Putt.of(putt, List.of(), List.of())).toList(), notes(h, sight, player, from, to),
                usual, BEFORE_DAYS, usual.stream().mapToInt(Usual::putts).sum());
    }

    /** Run by run, and within one as they were putted: a clock that is set back in the middle of one turns none round. */
    private static Comparator<AttemptRow> inOrder(List<RunRow> latestFirst) {
        Map<Integer, Integer> places = new HashMap<>();
        latestFirst.forEach(run -> places.put(run.id(), -places.size()));
        return Comparator.comparingInt((AttemptRow putt) -> places.getOrDefault(putt.of().run(), 1))
                .thenComparingLong(AttemptRow::sequence);
    }

    private static List<AttemptRow> attempts(Handle h, LogFilter filter) {
        List<AttemptRow> all = new ArrayList<>();
        Cursor after = null;
        do {
            Page<AttemptRow> page = Attempts.page(h, filter, after, Page.MOST);
            all.addAll(page.rows());
            after = page.next();
        } while (after != null && all.size() < MOST_PUTTS);
        return all;
    }

    private static List<Note> notes(Handle h, Sight sight, PlayerRow player, long fromMs, long toMs) {
        List<NoteRow> notes = Notes.ofPlayer(h, sight, player.id(), null, Page.MOST).rows();
        return notes.stream().filter(note -> note.atMs() >= fromMs && note.atMs() < toMs).map(Note::of).toList();
    }

    private static LocalDate day(long ms, ZoneId zone) {
        return Instant.ofEpochMilli(ms).atZone(zone).toLocalDate();
    }
}
