package org.cupbeam.studio.store.upkeep;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.EventJson;
import org.cupbeam.studio.store.CheckSum;
import org.jdbi.v3.core.Handle;

/**
 * What was found in a damaged store, in a file of its own: events that are what they were, and the rows of the other tables as
 * far as they read. Nothing is made of it yet.
 */
final class Finds {
    /** Made anew from the others, or of no use in another file. */
    private static final Set<String> NOT_LOOKED_FOR = Set.of("event", "lane_quarter", "boot", "ingest_lease", "pen", "run_day", "flyway_schema_history");
    private static final String EVENT = """
            CREATE TABLE event (studio TEXT, lane TEXT, journal TEXT, sequence INTEGER, envelope TEXT, received_ms INTEGER,
                old_journal INTEGER, proven INTEGER, carved INTEGER, PRIMARY KEY (studio, lane, journal, sequence)) WITHOUT ROWID
            """;
    private static final List<String> EVENT_COLUMNS = List.of("journal_id", "sequence", "received_ms", "envelope", "check_sum");

    private final Handle into;
    private final Connection from;
    private final Set<String> unread = new HashSet<>();
    private final Map<String, Long> spoilt = new LinkedHashMap<>();
    private long spoiltEvents;

    private Finds(Handle into, Connection from) {
        this.into = into;
        this.from = from;
    }

    /**
     * Looks through a damaged store.
     *
     * @param into    an empty file's
     * @param pattern a new store's, which knows all tables
     * @param copy    of the damaged one, which may be changed
     */
    static Finds of(Handle into, Handle pattern, Connection from, Path copy) throws SQLException, IOException {
        Finds finds = new Finds(into, from);
        into.begin();
        into.execute(EVENT);
        finds.events();
        for (Path part : List.of(copy, Place.part(copy, "-wal"))) {
            if (Files.exists(part)) {
                Carving.of(part, text -> finds.event(text, null, null, true, true));
            }
        }
        for (String table : pattern.createQuery("SELECT name FROM sqlite_schema WHERE type = 'table'").mapTo(String.class).list()) {
            if (!NOT_LOOKED_FOR.contains(table) && !table.startsWith("sqlite_")) {
                finds.table(table, columns(pattern, table));
            }
        }
        into.commit();
        return finds;
    }

    /** Tables of which something could not be read. */
    Set<String> unread() {
        return unread;
    }

    /** Rows that hold what their table cannot, by table. */
    Map<String, Long> spoilt() {
        return spoilt;
    }

    /** Events' rows that are not as they were kept. */
    long spoiltEvents() {
        return spoiltEvents;
    }

    private void events() throws SQLException {
        List<String> have = columnsThere("event");
        List<String> ask = EVENT_COLUMNS.stream().map(each -> have.contains(each) ? each : "NULL").toList();
        boolean whole = new Scan(from, "event", ask, row -> {
            if (!(row[3] instanceof String envelope)) {
                spoiltEvents++;
                return;
            }
            boolean summed = row[4] != null;
            boolean holds = !summed || CheckSum.of(envelope).equals(row[4]);
            if (!holds || !event(envelope, row[0], row[2], summed, false)) {
                spoiltEvents++;
            }
        }).read();
        if (!whole) {
            unread.add("event");
        }
    }

    /** What was found first stays: SQLite's own view of things comes before what lies about. @return false for what is no event */
    private boolean event(String envelope, Object oldJournal, Object receivedMs, boolean proven, boolean carved) {
        try {
            EventJson.Envelope is = EventJson.envelope(envelope.getBytes(StandardCharsets.UTF_8));
            long received = receivedMs instanceof Number ms ? ms.longValue() : is.time().toEpochMilli();
            into.execute("INSERT INTO event VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO " + (carved
                    ? "UPDATE SET envelope = excluded.envelope WHERE carved = 1" : "NOTHING"), is.source().studio(), is.source().lane(),
                    is.source().journal(), is.sequence(), envelope, received, oldJournal instanceof Number id ? id.longValue() : null,
                    proven ? 1 : 0, carved ? 1 : 0);
            return is.sequence() > 0;
        } catch (BadMessage e) {
            return false;
        }
    }

    private void table(String table, Map<String, String> columns) throws SQLException {
        into.execute("CREATE TABLE " + table + " (" + String.join(", ", columns.keySet()) + ")");
        List<String> have = columnsThere(table);
        List<String> ask = columns.keySet().stream().map(each -> have.contains(each) ? each : "NULL").toList();
        List<String> types = new ArrayList<>(columns.values());
        String insert = "INSERT INTO " + table + " VALUES (" + Stream.generate(() -> "?").limit(types.size()).collect(Collectors.joining(", ")) + ")";
        boolean whole = new Scan(from, table, ask, row -> {
            if (fits(row, types)) {
                into.execute(insert, row);
            } else {
                spoilt.merge(table, 1L, Long::sum);
            }
        }).read();
        if (!whole && !(have.isEmpty() && readsSchema())) { // one that an older store does not have is not missed
            unread.add(table);
        }
    }

    /** Whether each value is of its column's kind: what stands in another page's place often is not. */
    private static boolean fits(Object[] row, List<String> types) {
        for (int i = 0; i < row.length; i++) {
            Object value = row[i];
            boolean fits = value == null || (types.get(i).equals("TEXT") ? value instanceof String
                    : types.get(i).startsWith("DOUBLE") ? value instanceof Number : value instanceof Integer || value instanceof Long);
            if (!fits) {
                return false;
            }
        }
        return true;
    }

    private boolean readsSchema() {
        return !columnsThere("event").isEmpty();
    }

    private static Map<String, String> columns(Handle h, String table) {
        Map<String, String> columns = new LinkedHashMap<>();
        h.createQuery("SELECT name, type FROM pragma_table_info('" + table + "') ORDER BY cid").map((row, ctx) ->
                Map.entry(row.getString(1), row.getString(2))).forEach(each -> columns.put(each.getKey(), each.getValue()));
        return columns;
    }

    /** None where SQLite does not know the table: an older store's, or one whose first page is gone. */
    private List<String> columnsThere(String table) {
        List<String> names = new ArrayList<>();
        try (var ask = from.prepareStatement("SELECT name FROM pragma_table_info('" + table + "')"); var rows = ask.executeQuery()) {
            while (rows.next()) {
                names.add(rows.getString(1));
            }
        } catch (SQLException unreadable) {
            names.clear();
        }
        return names;
    }
}
