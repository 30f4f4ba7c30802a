package org.cupbeam.studio.store.upkeep;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.StoreTrouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.JDBC;
import org.sqlite.SQLiteConfig;

/**
 * Makes a damaged store sound: what can be read of it is brought into a new file beside it, which is checked and then takes its
 * place; the damaged one is kept. Nothing is ever changed in the damaged file itself, and where nothing can be read of it nothing
 * takes its place. No host may be running. Meanwhile there is to be room for three times the store.
 */
public final class Repair {
    private static final String[] PARTS = {"", "-wal"};

    /**
     * What came of it.
     *
     * @param said  what was kept and what was not, in words
     * @param is    what the new store is like; null where there was nothing to do
     * @param aside where the damaged store is kept; null where the store's place was not given to the new one
     */
    public record Done(List<String> said, Checkup is, Path aside) {
        public Done {
            said = List.copyOf(said);
        }
    }

    private final Path file;
    private final Path folder;
    private final List<String> said = new ArrayList<>();

    private Repair(Path file, Path folder) {
        this.file = file;
        this.folder = folder;
    }

    /** Does all of it, and then leaves everything as it was. */
    public static Done look(Path file) throws IOException {
        return of(file, null);
    }

    /** Repairs a store where that is damaged. */
    public static Done of(Path file, Clock wall) throws IOException {
        Copies.exists(file);
        Checkup was = Checkup.of(Database.file(file));
        if (was.isSound()) {
            return new Done(List.of("It is sound, and stays as it is."), null, null);
        }
        Path folder = Files.createTempDirectory(file.toAbsolutePath().getParent(), ".repairing");
        try {
            return new Repair(file, folder).made(wall);
        } catch (SQLException | JdbiException | StoreTrouble e) {
            throw new IOException(file + ": could not be repaired (" + e.getMessage() + "); nothing was changed", e);
        } finally {
            delete(folder);
        }
    }

    private Done made(Clock wall) throws IOException, SQLException {
        Path copy = folder.resolve("damaged.db");
        for (String part : PARTS) {
            if (Files.exists(Place.part(file, part))) {
                Files.copy(Place.part(file, part), Place.part(copy, part));
            }
        }
        Path half = folder.resolve("new.db");
        Store.open(Database.file(half)).close();
        Path found = folder.resolve("found.db");
        Finds finds = find(copy, half, found);
        Gaps gaps = new Rebuilding(half, found).all();
        Checkup is = Checkup.of(Database.file(half));
        if (!is.isSound()) {
            throw new IOException(file + ": what was made of it is not sound (" + is.troubles().get(0) + "); nothing was changed. "
                    + "Restore a copy, and keep this file for whoever looks after Cupbeam");
        }
        if (is.events() == 0 && is.attempts() == 0) {
            throw new IOException(file + ": nothing that was ever played can be read of it; nothing was changed. Restore a copy, or move the "
                    + "file and its -wal away to begin with an empty store");
        }
        say(finds, gaps, found, half);
        return new Done(said, is, wall == null ? null : give(half, wall));
    }

    private Path give(Path half, Clock wall) throws IOException {
        Path beside = Place.beside(file, ".half");
        Files.move(half, beside, StandardCopyOption.ATOMIC_MOVE);
        PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (view != null) {
            Files.setPosixFilePermissions(beside, view.readAttributes().permissions());
        }
        return Place.give(beside, file, "damaged", wall.instant());
    }

    /** The copy is opened so that SQLite reads on where it would otherwise give up at once: with its last pages gone, say. */
    private static Finds find(Path copy, Path half, Path found) throws SQLException, IOException {
        try (Connection from = JDBC.createConnection(JDBC.PREFIX + copy, new SQLiteConfig().toProperties());
             Handle pattern = Jdbi.create(Database.file(half)::reader).open();
             Handle into = Jdbi.create(() -> JDBC.createConnection(JDBC.PREFIX + found, new SQLiteConfig().toProperties())).open()) {
            try (Statement tell = from.createStatement()) {
                tell.execute("PRAGMA writable_schema = ON");
            } catch (SQLException unreadable) {
                // then SQLite finds nothing, and what lies about is left
            }
            into.execute("PRAGMA synchronous = OFF"); // of no use after this
            return Finds.of(into, pattern, from, copy);
        }
    }

    private void say(Finds finds, Gaps gaps, Path found, Path half) {
        try (Handle was = Jdbi.create(Database.file(found)::reader).open(); Handle is = Jdbi.create(Database.file(half)::reader).open()) {
            long events = count(was, "event");
            long unproven = count(was, "event WHERE proven = 0");
            long carved = count(was, "event WHERE carved = 1");
            said.add(events + " events are kept, each with the check sum that it had" + (unproven == 0 ? "" : ", but " + unproven
                    + " from before there were any, as they read") + (carved == 0 ? "" : "; " + carved
                    + " of them were found where SQLite does not get to any more"));
            if (finds.spoiltEvents() > 0) {
                said.add(finds.spoiltEvents() + " rows of events were not as they had been kept, and are left out");
            }
            said.addAll(gaps.said());
            long rows = count(is, "attempt a WHERE NOT EXISTS (SELECT 1 FROM event e WHERE e.journal_id = a.journal_id AND e.sequence = a.sequence)");
            if (rows > 0) {
                said.add(rows + " attempts that have no event, imported ones and those whose event is gone, are kept as their rows read");
            }
            for (String table : List.of("player", "note", "amendment", "fault", "shelf_drill", "league", "setting", "staff")) {
                kept(finds, table, count(was, table), count(is, table));
            }
        }
    }

    /** Rows that no event tells of: these have no check sum, and are as they read. */
    private void kept(Finds finds, String table, long found, long kept) {
        long lost = Math.max(0, found - kept) + finds.spoilt().getOrDefault(table, 0L);
        if (lost > 0 || finds.unread().contains(table)) {
            said.add("Table " + table + ": " + kept + " rows are kept" + (lost == 0 ? "" : ", " + lost + " could not be")
                    + (finds.unread().contains(table) ? ", and not all of it could be read" : ""));
        }
    }

    private static long count(Handle h, String what) {
        return h.createQuery("SELECT count(*) FROM " + what).mapTo(Long.class).one();
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path each : files.toList()) {
                Files.delete(each);
            }
        }
        Files.delete(folder);
    }
}
