package org.cupbeam.studio.store.league;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Words;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The leagues that there are. One that was taken off can be put back. */
public final class LeagueBook {
    /** The most. */
    public static final int MOST = 200;
    private static final Logger LOG = LoggerFactory.getLogger(LeagueBook.class);
    private static final String THERE = "SELECT id, name, terms, breaks, slope, zone, first_day, weeks, runs, version, changed_by, "
            + "changed_ms FROM league WHERE gone_ms IS NULL";

    /**
     * A league in the book.
     *
     * @param version   counts its changes
     * @param changedBy who made it as it is
     * @param changedMs when, ms since 1970
     */
    public record Kept(int id, League league, int version, String changedBy, long changedMs) {
    }

    private LeagueBook() {
    }

    /** All of them, the one that begins last first. */
    public static List<Kept> all(Handle h) {
        return kept(h, h.createQuery(THERE + " ORDER BY first_day DESC, id DESC"));
    }

    public static Optional<Kept> find(Handle h, int id) {
        return kept(h, h.select(THERE + " AND id = ?", id)).stream().findFirst();
    }

    /**
     * Opens one.
     *
     * @throws IllegalArgumentException for a studio that has never been heard, or one league too many
     */
    public static Kept open(Handle h, League league, String by, long nowMs) {
        if (h.createQuery("SELECT count(*) FROM league WHERE gone_ms IS NULL").mapTo(Integer.class).one() >= MOST) {
            throw new IllegalArgumentException("there are " + MOST + " leagues; take one off first");
        }
        int id = h.createQuery("SELECT coalesce(max(id), 0) + 1 FROM league").mapTo(Integer.class).one();
        h.execute("INSERT INTO league (id, name, terms, breaks, slope, zone, first_day, weeks, runs, version, "
                        + "changed_by, changed_ms) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, 1, ?, ?)", id, league.name(),
                DrillJson.text(league.drill()), word(league.tags().breaks()), word(league.tags().slope()), league.zone().getId(),
                league.firstDay().toString(), league.weeks(), league.runs(), by, nowMs);
        for (String studio : league.inOrder()) {
            if (h.execute("INSERT INTO league_studio (league_id, studio_id) SELECT ?, id FROM studio WHERE name = ?", id, studio) == 0) {
                throw new IllegalArgumentException("studio: " + studio + " has not been heard here; choose one that has");
            }
        }
        return new Kept(id, league, 1, by, nowMs);
    }

    /** Another name, and so many weeks; empty where it is no longer as whoever asks knew it. */
    public static Optional<Kept> change(Handle h, int id, int version, String name, int weeks, String by, long nowMs) {
        Optional<Kept> was = find(h, id).filter(each -> each.version() == version);
        return was.map(each -> {
            League now = each.league().become(name, weeks);
            h.execute("UPDATE league SET name = ?, weeks = ?, version = version + 1, changed_by = ?, changed_ms = ? WHERE id = ?",
                    now.name(), weeks, by, nowMs, id);
            return new Kept(id, now, version + 1, by, nowMs);
        });
    }

    /** Takes one off. @return whether it was there */
    public static boolean takeOff(Handle h, int id, long nowMs) {
        return h.execute("UPDATE league SET gone_ms = ? WHERE id = ? AND gone_ms IS NULL", nowMs, id) == 1;
    }

    /** Puts back what was taken off. @return whether it was off */
    public static boolean putBack(Handle h, int id) {
        return h.execute("UPDATE league SET gone_ms = NULL WHERE id = ? AND gone_ms IS NOT NULL", id) == 1;
    }

    /** Every studio that was ever heard, by name. */
    public static List<String> studios(Handle h) {
        return h.createQuery("SELECT name FROM studio ORDER BY name").mapTo(String.class).list();
    }

    private static List<Kept> kept(Handle h, Query found) {
        Map<Integer, Set<String>> studios = new HashMap<>();
        h.createQuery("SELECT l.league_id, s.name FROM league_studio l JOIN studio s ON s.id = l.studio_id").map((row, ctx) ->
                studios.computeIfAbsent(row.getInt(1), id -> new HashSet<>()).add(row.getString(2))).list();
        return found.map((row, ctx) -> kept(row, studios.getOrDefault(row.getInt("id"), Set.of()))).list().stream()
                .flatMap(Optional::stream).toList();
    }

    private static Optional<Kept> kept(ResultSet row, Set<String> studios) throws SQLException {
        int id = row.getInt("id");
        try {
            Tags tags = new Tags(tag(row.getString("breaks"), Tags.Break.class), tag(row.getString("slope"), Tags.Slope.class));
            League league = new League(row.getString("name"), DrillJson.read(row.getString("terms")), tags,
                    ZoneId.of(row.getString("zone")), LocalDate.parse(row.getString("first_day")), row.getInt("weeks"),
                    row.getInt("runs"), studios);
            return Optional.of(new Kept(id, league, row.getInt("version"), row.getString("changed_by"), row.getLong("changed_ms")));
        } catch (BadMessage e) {
            LOG.warn("league {} plays a drill of a later version, and is passed over: {}", id, e.getMessage());
            return Optional.empty();
        }
    }

    private static <E extends Enum<E> & Worded> E tag(String wordOrNull, Class<E> type) {
        return wordOrNull == null ? null : Words.find(type, wordOrNull);
    }

    private static String word(Worded tagOrNull) {
        return tagOrNull == null ? null : tagOrNull.word();
    }
}
