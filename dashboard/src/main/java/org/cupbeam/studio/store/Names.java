package org.cupbeam.studio.store;

import java.util.List;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Source;
import org.jdbi.v3.core.Handle;

/** The rows that stand for what has a name: studios, lanes, journals, players, drills, duels. */
final class Names {
    private final Numbers numbers;

    Names(Numbers numbers) {
        this.numbers = numbers;
    }

    int lane(Handle h, Source source) {
        int studio = numbers.of(h, "studio", "name = ?", List.of(source.studio()), id ->
                h.execute("INSERT INTO studio (id, name) VALUES (?, ?)", id, source.studio()));
        return numbers.of(h, "lane", "studio_id = ? AND name = ?", List.of(studio, source.lane()), id ->
                h.execute("INSERT INTO lane (id, studio_id, name) VALUES (?, ?, ?)", id, studio, source.lane()));
    }

    int journal(Handle h, Source source, long nowMs) {
        int lane = lane(h, source);
        return numbers.of(h, "journal", "lane_id = ? AND name = ?", List.of(lane, source.journal()), id ->
                h.execute("INSERT INTO journal (id, lane_id, name, seen_ms) VALUES (?, ?, ?, ?)", id, lane,
                        source.journal(), nowMs));
    }

    /** Whoever is called so, or was when the lane heard the name. */
    int player(Handle h, String name, long atMs) {
        String key = NameKey.of(name);
        return numbers.of(h, "player", "name_key = ? OR id = (SELECT player_id FROM player_alias WHERE name_key = ?)",
                List.of(key, key), id ->
                h.execute("INSERT INTO player (id, name, name_key, created_ms) VALUES (?, ?, ?, ?)", id,
                        name.strip(), key, atMs));
    }

    int drill(Handle h, Drill terms) {
        String text = DrillJson.text(terms);
        return numbers.of(h, "drill", "terms = ?", List.of(text), id ->
                h.execute("INSERT INTO drill (id, name, terms, limit_mm) VALUES (?, ?, ?, ?)", id, terms.name(), text,
                        terms.limitMm().isPresent() ? terms.limitMm().getAsDouble() : null));
    }

    Integer duel(Handle h, int journal, String nameOrNull) {
        return nameOrNull == null ? null
                : numbers.of(h, "duel", "journal_id = ? AND name = ?", List.of(journal, nameOrNull), id ->
                        h.execute("INSERT INTO duel (id, journal_id, name) VALUES (?, ?, ?)", id, journal, nameOrNull));
    }
}
