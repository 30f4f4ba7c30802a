package org.cupbeam.studio.store.logbook;

import java.util.Arrays;
import java.util.List;
import java.util.NoSuchElementException;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.sheet.Sheet;
import org.jdbi.v3.core.Handle;

/**
 * All that is held of one player, for that player: what was entered, what was measured, what was said, what was changed,
 * and the lanes' own messages word for word.
 */
public final class Dossier {
    private static final String ATTEMPTS = "SELECT a.at_ms, a.id, e.envelope FROM attempt a JOIN event e "
            + "ON e.journal_id = a.journal_id AND e.sequence = a.sequence WHERE ";
    private static final String RUNS = "SELECT r.started_ms, r.id, e.envelope FROM run r JOIN event e "
            + "ON e.journal_id = r.journal_id AND e.sequence = r.%s WHERE ";

    private record Message(long atMs, int id, String envelope) {
    }

    private Dossier() {
    }

    /**
     * All of it that is of some studios.
     *
     * @throws NoSuchElementException where there is no such player there
     */
    public static List<Sheet> of(Store store, Scope scope, int player) {
        PlayerRow row = store.read(h -> Players.one(h, Sight.of(h, scope), player))
                .orElseThrow(() -> new NoSuchElementException("there is no player " + player));
        LogFilter filter = LogFilter.ALL.player(player).within(scope);
        return List.of(new Sheet("players", List.of("name", "hand", "units", "remark", "created"),
                        List.of(LogSheets.player(row))),
                names(store, scope, player), LogSheets.runs(store, filter), LogSheets.attempts(store, filter),
                new Sheet("notes", List.of("at", "author", "words", "run", "attempt"), LogSheets.rows(store,
                        (h, after) -> Notes.ofPlayer(h, Sight.of(h, scope), player, after, Page.MOST), note -> Arrays.asList(
                                LogSheets.time(note.atMs()), note.author(), note.words(), note.run(), note.attempt()))),
                changes(store, scope, player),
                messages(store, "messages_on_attempts", ATTEMPTS, "a.at_ms, a.id", scope, player),
                messages(store, "messages_on_begun_runs", RUNS.formatted("started_sequence"), "r.started_ms, r.id", scope, player),
                messages(store, "messages_on_ended_runs", RUNS.formatted("ended_sequence"), "r.started_ms, r.id", scope, player));
    }

    private static Sheet names(Store store, Scope scope, int player) {
        List<String> keys = store.read(h -> h.select("SELECT name_key FROM player_alias WHERE player_id = ? AND "
                + Sight.of(h, scope).whole("player_id") + " ORDER BY name_key", player).mapTo(String.class).list());
        return new Sheet("other_names", List.of("name"), keys.stream().map(key -> List.<Object>of(key)).toList());
    }

    private static Sheet changes(Store store, Scope scope, int player) {
        List<Change> changes = store.read(h -> Trail.ofPlayer(h, Sight.of(h, scope), player));
        return new Sheet("what_was_changed", List.of("what", "at", "by", "reason", "was", "became", "run", "attempt"),
                changes.stream().map(each -> Arrays.<Object>asList(each.what(), LogSheets.time(each.atMs()), each.by(),
                        each.reason(), each.was(), each.became(), each.run(), each.attempt())).toList());
    }

    private static Sheet messages(Store store, String name, String sql, String keys, Scope scope, int player) {
        return new Sheet(name, List.of("message"), LogSheets.rows(store,
                (h, after) -> messages(h, sql, keys, Sight.of(h, scope), player, after), message -> List.of(message.envelope())));
    }

    private static Page<Message> messages(Handle h, String sql, String keys, Sight sight, int player,
                                          Cursor after) {
        Where where = new Where().and(keys.substring(0, 1) + ".player_id = ?", player)
                .and(sight.lane(keys.substring(0, 1) + ".lane_id"));
        if (after != null) {
            where.and("(" + keys + ") < (?, ?)", after.keys(2));
        }
        List<Message> rows = h.select(sql + where.sql() + " ORDER BY " + keys.replace(",", " DESC,") + " DESC LIMIT ?",
                where.values(Page.MOST + 1)).map((row, ctx) -> new Message(row.getLong(1), row.getInt(2),
                row.getString(3))).list();
        return Page.of(rows, Page.MOST, message -> Cursor.of(message.atMs(), message.id()));
    }
}
