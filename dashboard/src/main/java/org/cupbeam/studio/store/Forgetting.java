package org.cupbeam.studio.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/**
 * Takes a player's name out of everything that is kept: the list, what the events said, the trail of changes. In its
 * place stands that somebody was forgotten, so that what was counted goes on adding up.
 */
final class Forgetting {
    /** What stands in a name's place, with the number that the player had. */
    static final String INSTEAD = "forgotten player ";
    private static final int MOST_MENTIONS = 1_000;

    /** The events from one to another of a journal. */
    private record Stretch(int journal, long from, long to) {
    }

    private final Handle h;
    private final int player;
    private final long nowMs;
    private final String instead;
    private final String name;
    private final Set<String> keys;
    private final NameWords words;
    /** The player's number, and those of players who turned out to be the same; nothing but digits and commas. */
    private final String ids;

    Forgetting(Handle h, int player, long nowMs) {
        this.h = h;
        this.player = player;
        this.nowMs = nowMs;
        this.instead = INSTEAD + player;
        this.name = h.select("SELECT name FROM player WHERE id = ?", player).mapTo(String.class).one();
        this.keys = new HashSet<>(h.select("SELECT name_key FROM player WHERE id = ? UNION SELECT name_key "
                + "FROM player_alias WHERE player_id = ?", player, player).mapTo(String.class).list());
        this.words = new NameWords(keys);
        this.ids = h.select("SELECT id FROM player WHERE id = ? OR merged_into = ?", player, player)
                .mapTo(Integer.class).stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    /** Does it. @return the notes on others whose words hold the name */
    List<Integer> all() {
        stretches().forEach(this::events);
        corrections();
        h.execute("DELETE FROM note WHERE player_id = ? OR run_id IN (SELECT id FROM run WHERE player_id = ?) "
                + "OR attempt_id IN (SELECT a.id FROM note n JOIN attempt a ON a.id = n.attempt_id WHERE a.player_id = ?)",
                player, player, player);
        signatures("note", "author");
        signatures("note", "withdrawn_by");
        signatures("amendment", "by_whom");
        signatures("shelf_drill", "changed_by");
        signatures("league", "changed_by");
        h.execute("UPDATE amendment SET was = NULL, became = NULL WHERE player_id IN (" + ids + ") "
                + "AND what IN ('renamed', 'merged')");
        new Mentions(h, words, instead).all();
        h.execute("DELETE FROM player_alias WHERE player_id = ?", player);
        h.execute("UPDATE player SET name = NULL, name_key = NULL, hand = NULL, units = NULL, remark = NULL, "
                + "forgotten_ms = ? WHERE id IN (" + ids + ")", nowMs);
        return h.select("SELECT id FROM note WHERE lower(words) LIKE ? ESCAPE '!' ORDER BY id LIMIT " + MOST_MENTIONS,
                containing(name.toLowerCase(Locale.ROOT))).mapTo(Integer.class).list();
    }

    /** Where the name may stand: in everything between the beginning and the end of a run that is, or was, the player's. */
    private List<Stretch> stretches() {
        return h.select("""
                SELECT r.journal_id, r.started_sequence, coalesce(r.ended_sequence, (SELECT max(a.sequence) FROM attempt a
                    WHERE a.run_id = r.id), r.started_sequence), u.ended_sequence
                FROM run r LEFT JOIN duel u ON u.id = r.duel_id
                WHERE r.player_id = ? OR r.id IN (SELECT m.run_id FROM amendment m WHERE m.what = 'reassigned'
                    AND CAST(m.was AS INTEGER) IN (%s))
                ORDER BY r.journal_id, r.started_sequence
                """.formatted(ids), player).map((row, ctx) -> new Stretch(row.getInt(1), row.getLong(2),
                Math.max(row.getLong(3), row.getLong(4)))).list();
    }

    private void events(Stretch in) {
        record Kept(long sequence, String envelope) {
        }
        List<Kept> changed = new ArrayList<>();
        h.select("SELECT sequence, envelope FROM event WHERE journal_id = ? AND sequence BETWEEN ? AND ?", in.journal(),
                in.from(), in.to()).map((row, ctx) -> new Kept(row.getLong(1), row.getString(2))).forEach(event -> {
                    String without = without(event.envelope());
                    if (!without.equals(event.envelope())) {
                        changed.add(new Kept(event.sequence(), without));
                    }
                });
        changed.forEach(event -> h.execute("UPDATE event SET envelope = ?, check_sum = ? WHERE journal_id = ? AND sequence = ?",
                event.envelope(), CheckSum.of(event.envelope()), in.journal(), event.sequence()));
    }

    /** A player may have corrected something in whosever run, and others may say the name as their reason. */
    private void corrections() {
        record Signed(int journal, long sequence, String by, String reason) {
        }
        h.select("SELECT journal_id, sequence, by_whom, reason FROM correction").map((row, ctx) -> new Signed(row.getInt(1),
                row.getLong(2), row.getString(3), row.getString(4))).list().stream()
                .filter(each -> isName(each.by()) || words.in(each.reason())).forEach(each -> {
                    events(new Stretch(each.journal(), each.sequence(), each.sequence()));
                    h.execute("UPDATE correction SET by_whom = ?, reason = ? WHERE journal_id = ? AND sequence = ?",
                            isName(each.by()) ? instead : each.by(), words.replaced(each.reason(), instead), each.journal(),
                            each.sequence());
                });
    }

    private void signatures(String table, String column) {
        h.select("SELECT DISTINCT " + column + " FROM " + table + " WHERE " + column + " IS NOT NULL").mapTo(String.class)
                .list().stream().filter(this::isName).forEach(by -> h.execute("UPDATE " + table + " SET " + column
                        + " = ? WHERE " + column + " = ?", instead, by));
    }

    private String without(String envelope) {
        try {
            return Envelope.changed(envelope, (field, text) -> isName(text) ? instead
                    : "reason".equals(field) ? words.replaced(text, instead) : text);
        } catch (JsonProcessingException e) {
            return words.replaced(envelope, instead);
        }
    }

    private boolean isName(String text) {
        return keys.contains(NameKey.of(text));
    }

    private static String containing(String text) {
        return "%" + text.replaceAll("([!%_])", "!$1") + "%";
    }
}
