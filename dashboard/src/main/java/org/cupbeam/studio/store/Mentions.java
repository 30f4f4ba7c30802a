package org.cupbeam.studio.store;

import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/** Takes a name out of what others wrote, or a program said, where it may stand among other words. */
final class Mentions {
    private static final Map<String, List<String>> KEYED = Map.of("amendment", List.of("reason"), "player", List.of("remark"),
            "league", List.of("name"), "fault", List.of("words", "sign"));

    private final Handle h;
    private final NameWords words;
    private final String instead;

    Mentions(Handle h, NameWords words, String instead) {
        this.h = h;
        this.words = words;
        this.instead = instead;
    }

    void all() {
        KEYED.forEach((table, columns) -> columns.forEach(column -> texts(table, column, column + " IS NOT NULL")));
        texts("amendment", "was", "what NOT IN ('reassigned', 'rescored') AND was IS NOT NULL");
        texts("amendment", "became", "what NOT IN ('reassigned', 'rescored') AND became IS NOT NULL");
        deadLetters();
        unread();
    }

    private void texts(String table, String column, String where) {
        record Text(int id, String text) {
        }
        h.createQuery("SELECT id, " + column + " FROM " + table + " WHERE " + where).map((row, ctx) -> new Text(row.getInt(1),
                row.getString(2))).list().stream().filter(each -> words.in(each.text())).forEach(each ->
                h.execute("UPDATE " + table + " SET " + column + " = ? WHERE id = ?", words.replaced(each.text(), instead),
                        each.id()));
    }

    /** There are a thousand at most, and nothing is counted by them. */
    private void deadLetters() {
        record Letter(int id, String text) {
        }
        h.createQuery("SELECT id, topic, reason, payload FROM dead_letter").map((row, ctx) -> new Letter(row.getInt(1),
                row.getString(2) + "\n" + row.getString(3) + "\n" + row.getString(4))).list().stream()
                .filter(each -> words.in(each.text())).forEach(each -> h.execute("DELETE FROM dead_letter WHERE id = ?", each.id()));
    }

    /** What could not be read may say a name anywhere, and so may the words on why. */
    private void unread() {
        record Kept(int journal, long sequence, String envelope, String problem) {
        }
        h.createQuery("SELECT journal_id, sequence, envelope, problem FROM event WHERE problem IS NOT NULL")
                .map((row, ctx) -> new Kept(row.getInt(1), row.getLong(2), row.getString(3), row.getString(4))).list().stream()
                .filter(each -> words.in(each.envelope()) || words.in(each.problem())).forEach(each ->
                replace(each.journal(), each.sequence(), words.replaced(each.envelope(), instead), words.replaced(each.problem(), instead)));
    }

    private void replace(int journal, long sequence, String envelope, String problem) {
        h.execute("UPDATE event SET envelope = ?, check_sum = ?, problem = ? WHERE journal_id = ? AND sequence = ?", envelope,
                CheckSum.of(envelope), problem, journal, sequence);
    }
}
