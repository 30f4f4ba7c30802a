package org.cupbeam.journal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Map;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.EventJson;

/**
 * Looking after a journal's file: is it sound, a copy of it, what to do when it is not, and how to begin from a copy.
 *
 * <p>A journal that begins from a damaged one, or from a copy, has an id of its own: the old one may have used numbers
 * that the copy knows nothing of, and a number must never name two events. The old events go along as they were, to be
 * sent until the host says that it has them; those it had, it passes over. The play itself begins anew.
 */
public final class Upkeep {
    private Upkeep() {
    }

    /**
     * What a journal is like.
     *
     * @param trouble what is wrong; null where nothing is
     * @param id      of the journal; null where it cannot be read
     * @param events  that can be read
     * @param unsent  of them, beyond what the host has said that it stored
     * @param left    events of earlier journals that are still to be sent
     */
    public record State(String trouble, String id, long events, long unsent, long left) {
    }

    /**
     * A journal begun from another.
     *
     * @param id     its own
     * @param events of the other that it will send
     * @param aside  where the file went that was there before; null where there was none
     */
    public record Begun(String id, long events, Path aside) {
    }

    /** Looks at a journal without changing a byte of it, also while a lane writes to it. */
    public static State check(Path file) throws IOException {
        exists(file);
        Path folder = Files.createTempDirectory("cupbeam-check");
        try {
            return look(Snapshot.of(file, folder));
        } finally {
            Snapshot.delete(folder);
        }
    }

    private static State look(Path copy) throws IOException {
        String name = copy.getFileName().toString();
        try (Database database = Database.open(copy)) {
            if (Schema.isBehind(copy, database) && database.number("PRAGMA user_version") == 0) {
                return new State("holds no journal", null, 0, 0, 0);
            }
            String verdict = database.text("PRAGMA integrity_check(1)");
            String id = database.text("SELECT journal FROM about");
            long events = database.number("SELECT count(*) FROM event");
            String trouble = !"ok".equals(verdict) ? String.valueOf(verdict).replace('\n', ' ')
                    : id == null ? "has no id" : unreadable(database, id);
            long left = database.number("SELECT count(*) FROM sqlite_schema WHERE name = 'left_behind'") == 0 ? 0
                    : new LeftBehind(database).count();
            return new State(trouble, id, events, database.number(
                    "SELECT count(*) FROM event WHERE sequence > (SELECT stored FROM about)"), left);
        } catch (SQLException e) {
            return new State(e.getMessage(), null, Salvage.of(copy).size(), 0, 0);
        } catch (JournalException e) {
            return new State(e.getMessage().replace(copy.toString(), name), null, 0, 0, 0);
        }
    }

    /** An event that is not one; null where all are. */
    private static String unreadable(Database database, String id) throws SQLException {
        String notAsItWas = CheckSum.areIn(database) ? CheckSum.firstThatDoesNotHold(database) : null;
        if (notAsItWas != null) {
            return notAsItWas;
        }
        try (var select = database.connection().createStatement();
                var rows = select.executeQuery("SELECT sequence, payload FROM event ORDER BY sequence")) {
            while (rows.next()) {
                String wrong = wrong(id, rows.getLong(1), rows.getBytes(2));
                if (wrong != null) {
                    return "event " + rows.getLong(1) + " " + wrong;
                }
            }
            return null;
        }
    }

    private static String wrong(String id, long sequence, byte[] payload) {
        try {
            var event = EventJson.decode(payload);
            return event.sequence() == sequence && event.source().journal().equals(id) ? null : "is another journal's";
        } catch (BadMessage | RuntimeException e) {
            return "does not read (" + e.getMessage() + ")";
        }
    }

    /**
     * Copies a journal to one file, also while a lane writes to it.
     *
     * @param to no file that is there already
     * @throws IOException also for a journal that is damaged: a copy of it would be none
     */
    public static State backup(Path file, Path to) throws IOException {
        exists(file);
        if (Files.exists(to)) {
            throw new FileAlreadyExistsException(to.toString());
        }
        Path folder = Files.createTempDirectory(to.toAbsolutePath().getParent(), ".copying");
        try {
            Path copy = Snapshot.of(file, folder);
            State state = look(copy);
            if (state.trouble() != null) {
                throw new IOException(file + ": is damaged (" + state.trouble() + "), and a copy would be too; see 'journal repair'");
            }
            try (Database database = Database.open(copy)) {
                database.execute("PRAGMA journal_mode = DELETE"); // all in the one file
            }
            settle(copy, to);
            return state;
        } catch (SQLException e) {
            throw new IOException(to + ": " + e.getMessage(), e);
        } finally {
            Snapshot.delete(folder);
        }
    }

    /**
     * Begins a journal anew from what can be read of a damaged one, which is kept beside it.
     *
     * @return null where it was sound, and so left as it was
     * @throws JournalException where a lane has it open, or it is another program's
     */
    public static Begun repair(Path file, Instant now) throws IOException, JournalException {
        exists(file);
        try (Claim claim = Claim.on(file)) {
            Opening.Opened opened = Opening.open(file, now);
            try (Database database = opened.database()) {
                return opened.movedAside() == null ? null : new Begun(database.text("SELECT journal FROM about"),
                        new LeftBehind(database).count(), opened.movedAside());
            }
        } catch (SQLException e) {
            throw Database.failure(file, e);
        }
    }

    /**
     * Begins a lane's journal anew from a copy, and from what can be read of the one that is there, which is kept beside
     * it.
     */
    public static Begun restore(Path copy, Path file, Instant now) throws IOException, JournalException {
        exists(copy);
        try (Claim claim = Claim.on(file)) {
            Map<Salvage.Key, byte[]> events = Salvage.of(copy);
            if (events.isEmpty()) {
                throw new IOException(copy + ": holds no event that can be read; name a copy that 'journal backup' made");
            }
            if (Files.exists(file)) {
                events.putAll(Salvage.of(file));
            }
            Path half = file.resolveSibling(file.getFileName() + ".half");
            Files.deleteIfExists(half);
            String id = begin(half, events, now);
            Path aside = Files.exists(file) ? Opening.moveAside(file, "replaced", now) : null;
            Files.move(half, file, StandardCopyOption.ATOMIC_MOVE);
            return new Begun(id, events.size(), aside);
        } catch (SQLException e) {
            throw Database.failure(file, e);
        }
    }

    private static String begin(Path half, Map<Salvage.Key, byte[]> events, Instant now)
            throws SQLException, JournalException {
        try (Database database = Opening.open(half, now).database()) {
            database.transaction(() -> {
                new LeftBehind(database).add(events);
                return null;
            });
            return database.text("SELECT journal FROM about");
        }
    }

    private static void exists(Path file) throws NoSuchFileException {
        if (!Files.isRegularFile(file)) {
            throw new NoSuchFileException(file.toString());
        }
    }

    private static void settle(Path copy, Path to) throws IOException {
        try (FileChannel channel = FileChannel.open(copy, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        Files.move(copy, to, StandardCopyOption.ATOMIC_MOVE);
    }
}
