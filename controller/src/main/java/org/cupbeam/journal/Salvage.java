package org.cupbeam.journal;

import java.io.IOException;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.TreeMap;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;

/**
 * The events that a damaged journal still holds. They are looked for twice: by SQLite, as far as it gets, and byte by
 * byte in the file and its log, since each event is a text of its own that tells where it belongs. What does not read
 * as a whole event, or does not have the check sum that stands beside it, is left; those of older journals have none.
 */
final class Salvage {
    private static final Logger LOG = LoggerFactory.getLogger(Salvage.class);
    private static final byte[] BEGINNING = "{\"specversion\"".getBytes(StandardCharsets.US_ASCII);
    private static final int LIKE_A_SUM = CheckSum.LENGTH - 2;
    private static final int EVENT_MAX_BYTES = 1 << 16;

    private final TreeMap<Key, byte[]> found = new TreeMap<>();

    /** What an event is known by. */
    record Key(String journal, long sequence) implements Comparable<Key> {
        @Override
        public int compareTo(Key other) {
            int journals = journal.compareTo(other.journal);
            return journals != 0 ? journals : Long.compare(sequence, other.sequence);
        }
    }

    private Salvage() {
    }

    /**
     * All events that can be read, those of each journal in order.
     *
     * @param file of a journal that nobody has open; it is not changed, and neither is its log beside it
     */
    static TreeMap<Key, byte[]> of(Path file) throws IOException {
        Salvage salvage = new Salvage();
        for (String part : new String[] {"", "-wal"}) {
            Path each = file.resolveSibling(file.getFileName() + part);
            if (Files.exists(each) && Files.size(each) <= Integer.MAX_VALUE) {
                salvage.carve(each);
            }
        }
        salvage.ask(file);
        return salvage.found;
    }

    /** On a copy: merely to look at a file, SQLite may write its log into it. */
    private void ask(Path file) throws IOException {
        Path folder = Files.createTempDirectory("cupbeam-salvage");
        try {
            Path copy = Snapshot.plain(file, folder);
            for (String order : new String[] {"ASC", "DESC"}) { // from both ends up to the damage
                table(copy, "event", " ORDER BY sequence " + order);
                table(copy, "left_behind", " ORDER BY journal " + order + ", sequence " + order);
            }
        } finally {
            Snapshot.delete(folder);
        }
    }

    /** An older journal's has no check sums; where a newer one's have lost their name, the file's bytes still tell them. */
    private void table(Path copy, String name, String inOrder) {
        if (!ask(copy, "SELECT payload, check_sum FROM " + name + inOrder)) {
            ask(copy, "SELECT payload, NULL FROM " + name
                    + " WHERE (SELECT user_version FROM pragma_user_version) < " + Schema.WITH_CHECK_SUMS + inOrder);
        }
    }

    /** @return whether there is such a table, however far it reads */
    private boolean ask(Path copy, String sql) {
        boolean begun = false;
        try (Connection connection = new SQLiteConfig().createConnection(Database.url(copy));
                Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(sql)) {
            begun = true;
            while (rows.next()) {
                take(rows.getBytes(1), rows.getString(2));
            }
        } catch (SQLException | RuntimeException e) {
            LOG.debug("{}: {}", sql, e.toString());
        }
        return begun;
    }

    private void carve(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            MappedByteBuffer bytes = channel.map(MapMode.READ_ONLY, 0, channel.size());
            for (int at = 0; at <= bytes.limit() - BEGINNING.length; at++) {
                if (bytes.get(at) == '{' && begins(bytes, at)) {
                    int end = end(bytes, at);
                    if (end > 0) {
                        byte[] text = new byte[end - at];
                        bytes.get(at, text);
                        take(text, sumAt(bytes, end));
                    }
                }
            }
        }
    }

    /** What stands right behind an event, where that is a check sum, damaged perhaps; null where it is nothing like one. */
    private static String sumAt(MappedByteBuffer bytes, int at) {
        byte[] behind = new byte[Math.min(CheckSum.LENGTH, bytes.limit() - at)];
        bytes.get(at, behind);
        String text = new String(behind, StandardCharsets.ISO_8859_1);
        return text.chars().filter(each -> Character.digit(each, 16) >= 0).count() >= LIKE_A_SUM ? text : null;
    }

    private static boolean begins(MappedByteBuffer bytes, int at) {
        for (int i = 0; i < BEGINNING.length; i++) {
            if (bytes.get(at + i) != BEGINNING[i]) {
                return false;
            }
        }
        return true;
    }

    /** Where the object ends that begins here; 0 where it does not. */
    private static int end(MappedByteBuffer bytes, int from) {
        int depth = 0;
        boolean quoted = false;
        for (int at = from; at < Math.min(bytes.limit(), from + EVENT_MAX_BYTES); at++) {
            byte is = bytes.get(at);
            if (quoted) {
                at += is == '\\' ? 1 : 0;
                quoted = is != '"';
            } else if (is == '"') {
                quoted = true;
            } else if (is == '{') {
                depth++;
            } else if (is == '}' && --depth == 0) {
                return at + 1;
            }
        }
        return 0;
    }

    private void take(byte[] text, String sumOrNull) {
        if (text == null || !CheckSum.holds(text, sumOrNull)) {
            return;
        }
        try {
            Event event = EventJson.decode(text);
            found.putIfAbsent(new Key(event.source().journal(), event.sequence()), text);
        } catch (BadMessage | RuntimeException torn) {
            LOG.debug("not an event: {}", torn.toString());
        }
    }
}
