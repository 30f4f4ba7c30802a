package org.cupbeam.studio.store.logbook;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.cupbeam.studio.store.Sight;
import org.jdbi.v3.core.Handle;

/** Notes and changes as rows, with what they are about in words that hold anywhere, not in this store's numbers. */
final class Abouts {
    /** What an attempt, a run or a player is called outside. */
    private record About(String studio, String lane, String journal, Long sequence, String run, String player) {
        static final About NOTHING = new About(null, null, null, null, null, null);
    }

    private Abouts() {
    }

    /** A page of notes, each a row; the oldest first. */
    static Page<List<Object>> notes(Handle h, Sight sight, Cursor after) {
        List<NoteRow> rows = h.select(NoteRow.SELECT + sight.note() + " AND n.id > ? ORDER BY n.id LIMIT " + (Page.MOST + 1),
                after == null ? 0L : after.keys(1)[0]).map((row, ctx) -> NoteRow.read(row)).list();
        Page<NoteRow> page = Page.of(rows, Page.MOST, note -> Cursor.of(note.id()));
        Map<Integer, About> attempts = attempts(h, page.rows().stream().map(NoteRow::attempt).toList());
        Map<Integer, About> runs = runs(h, page.rows().stream().map(NoteRow::run).toList());
        Map<Integer, About> players = players(h, page.rows().stream().map(NoteRow::player).toList());
        return new Page<>(page.rows().stream().map(note -> {
            About about = about(note.attempt(), attempts, note.run(), runs, note.player(), players);
            return Arrays.<Object>asList(LogSheets.time(note.atMs()), note.author(), note.words(), about.player(),
                    about.studio(), about.lane(), about.journal(), about.run(), about.sequence());
        }).toList(), page.next());
    }

    /** A page of changes, each a row; the newest first. */
    static Page<List<Object>> changes(Handle h, Sight sight, Cursor after) {
        Page<Change> page = Trail.page(h, sight, after, Page.MOST);
        Map<Integer, About> attempts = attempts(h, page.rows().stream().map(Change::attempt).toList());
        Map<Integer, About> runs = runs(h, page.rows().stream().map(Change::run).toList());
        Map<Integer, About> players = players(h, page.rows().stream().map(Change::player).toList());
        return new Page<>(page.rows().stream().map(change -> {
            About about = about(change.attempt(), attempts, change.run(), runs, change.player(), players);
            return Arrays.<Object>asList(change.what(), LogSheets.time(change.atMs()), change.by(), change.reason(),
                    change.was(), change.became(), about.studio(), about.lane(), about.journal(), about.sequence(),
                    about.run(), about.player(), change.journal() == 0 ? null : change.number());
        }).toList(), page.next());
    }

    /** The most particular of the three. */
    private static About about(Integer attempt, Map<Integer, About> attempts, Integer run, Map<Integer, About> runs,
                               Integer player, Map<Integer, About> players) {
        return attempt != null ? attempts.getOrDefault(attempt, About.NOTHING)
                : run != null ? runs.getOrDefault(run, About.NOTHING)
                : player != null ? players.getOrDefault(player, About.NOTHING) : About.NOTHING;
    }

    private static Map<Integer, About> attempts(Handle h, List<Integer> ids) {
        return find(h, "SELECT a.id, s.name, l.name, j.name, a.sequence, r.name, p.name FROM attempt a "
                + "LEFT JOIN run r ON r.id = a.run_id LEFT JOIN player p ON p.id = a.player_id "
                + "JOIN journal j ON j.id = a.journal_id JOIN lane l ON l.id = a.lane_id "
                + "JOIN studio s ON s.id = l.studio_id WHERE a.id IN (%s)", ids);
    }

    private static Map<Integer, About> runs(Handle h, List<Integer> ids) {
        return find(h, "SELECT r.id, s.name, l.name, j.name, NULL, r.name, p.name FROM run r "
                + "LEFT JOIN player p ON p.id = r.player_id JOIN journal j ON j.id = r.journal_id "
                + "JOIN lane l ON l.id = r.lane_id JOIN studio s ON s.id = l.studio_id WHERE r.id IN (%s)", ids);
    }

    private static Map<Integer, About> players(Handle h, List<Integer> ids) {
        return find(h, "SELECT p.id, NULL, NULL, NULL, NULL, NULL, p.name FROM player p WHERE p.id IN (%s)", ids);
    }

    private static Map<Integer, About> find(Handle h, String sql, List<Integer> ids) {
        String all = ids.stream().filter(id -> id != null).distinct().map(String::valueOf).collect(Collectors.joining(", "));
        Map<Integer, About> found = new TreeMap<>();
        if (!all.isEmpty()) {
            h.createQuery(sql.formatted(all)).map((row, ctx) -> {
                Columns in = new Columns(row);
                found.put(in.whole(), new About(in.text(), in.text(), in.text(), in.largeOrNull(), in.text(), in.text()));
                return 0;
            }).list();
        }
        return found;
    }
}
