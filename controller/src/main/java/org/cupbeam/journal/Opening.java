package org.cupbeam.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.UUID;
import org.cupbeam.event.Source;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** From a file's name to a journal that is sound: checked, of our version, with an id; a damaged one moved aside. */
final class Opening {
    private static final Logger LOG = LoggerFactory.getLogger(Opening.class);

    /** An open journal file, and what had to be done for it. */
    record Opened(Database database, Path movedAside) {
    }

    private Opening() {
    }

    static Opened open(Path file, Instant now) throws JournalException {
        NativeLibrary.unpackInto(file.toAbsolutePath().getParent());
        Path movedAside = null;
        for (int attempt = 0; ; attempt++) {
            try {
                Opened opened = new Opened(sound(file), movedAside);
                if (movedAside != null) {
                    save(opened, file);
                }
                return opened;
            } catch (SQLException e) {
                if (!Database.isDamage(e) || attempt > 0) {
                    throw Database.failure(file, e);
                }
                movedAside = moveAside(file, "corrupt", now);
                LOG.error("{} is damaged ({}): moved to {}, a new journal begins", file, e.getMessage(), movedAside);
            }
        }
    }

    /** Into the new journal goes what can be read of the old, to be sent. Without it the new one is no worse. */
    private static void save(Opened opened, Path file) throws SQLException {
        try {
            Map<Salvage.Key, byte[]> events = Salvage.of(opened.movedAside);
            opened.database.transaction(() -> {
                new LeftBehind(opened.database).add(events);
                return null;
            });
            LOG.warn("{}: {} events were saved out of {}", file, events.size(), opened.movedAside);
        } catch (IOException e) {
            LOG.error("{}: nothing could be saved out of {} ({})", file, opened.movedAside, e.toString());
        }
    }

    /** Opens it if it is a journal of this version, or can be made one, and is not damaged. */
    static Database sound(Path file) throws SQLException, JournalException {
        Database database = Database.open(file);
        try {
            if (Schema.isBehind(file, database)) {
                check(database);
                database.close();
                Migration.run(file);
                database = Database.open(file);
            }
            database.configure();
            check(database);
            String wrong = CheckSum.firstThatDoesNotHold(database);
            if (wrong != null) {
                throw new SQLiteException(wrong, SQLiteErrorCode.SQLITE_CORRUPT);
            }
            String id = database.text("SELECT journal FROM about");
            if (id != null && !Source.isJournal(id)) {
                throw new SQLiteException("its id is none that a journal can have", SQLiteErrorCode.SQLITE_CORRUPT);
            }
            if (id == null) {
                database.execute("INSERT INTO about (one, journal) VALUES (1, '"
                        + UUID.randomUUID().toString().replace("-", "") + "')");
            }
            return database;
        } catch (SQLException | JournalException e) {
            database.close();
            throw e;
        }
    }

    private static void check(Database database) throws SQLException {
        String verdict = database.text("PRAGMA quick_check(1)");
        if (!"ok".equals(verdict)) {
            throw new SQLiteException(String.valueOf(verdict).replace('\n', ' '),
                    SQLiteErrorCode.SQLITE_CORRUPT);
        }
    }

    static Path moveAside(Path file, String because, Instant now) throws JournalException {
        String time = DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC).format(now);
        Path aside = free(file.resolveSibling(file.getFileName() + "." + because + "-" + time));
        try {
            for (String part : new String[] {"", "-wal", "-shm"}) {
                Path from = file.resolveSibling(file.getFileName() + part);
                if (Files.exists(from)) {
                    Files.move(from, aside.resolveSibling(aside.getFileName() + part),
                            StandardCopyOption.ATOMIC_MOVE);
                }
            }
            return aside;
        } catch (IOException e) {
            throw new JournalException(JournalException.Kind.DAMAGED, file + ": cannot be moved aside ("
                    + e + "); move it away yourself", e);
        }
    }

    private static Path free(Path wanted) {
        Path free = wanted;
        for (int i = 2; Files.exists(free) && i < 1000; i++) {
            free = wanted.resolveSibling(wanted.getFileName() + "-" + i);
        }
        return free;
    }
}
