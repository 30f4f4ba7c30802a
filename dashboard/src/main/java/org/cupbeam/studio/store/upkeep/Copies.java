package org.cupbeam.studio.store.upkeep;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;

/** Copies of a store in a file of SQLite's: made while it is written to, and put back in its place. */
public final class Copies {
    private Copies() {
    }

    /**
     * Copies a store to one file, also while a host writes to it. The copy is whole, or is not there.
     *
     * @param to no file that is there already
     * @throws IOException also for a store that is damaged: a copy of it would be none
     */
    public static Checkup backup(Path file, Path to) throws IOException {
        exists(file);
        if (Files.exists(to)) {
            throw new FileAlreadyExistsException(to.toString());
        }
        Path half = Place.beside(to, ".half");
        try {
            own(half);
            vacuum(file, half);
            Checkup is = Checkup.of(Database.file(half));
            if (!is.isSound()) {
                throw new IOException(file + ": is damaged (" + is.troubles().get(0) + "), and a copy would be too; see 'store check'");
            }
            Place.sync(half);
            Files.move(half, to);
            Place.sync(to.toAbsolutePath().getParent());
            return is;
        } catch (SQLException e) {
            throw new IOException(file + ": was not copied (" + e.getMessage() + ")", e);
        } finally {
            Place.remove(half);
        }
    }

    /**
     * Puts a copy in a store's place, once it has been found sound; what was there is kept beside it. No host may be running.
     *
     * @return what the copy is like, and where the old store is kept; null where there was none
     */
    public static Restored restore(Path copy, Path file, Clock wall) throws IOException {
        exists(copy);
        Path log = copy.resolveSibling(copy.getFileName() + "-wal");
        if (Files.exists(log) && Files.size(log) > 0) {
            throw new IOException(copy + ": a part of it is in " + log.getFileName() + ", so it is a store that was at work, and no copy; "
                    + "name one that 'store backup' made");
        }
        Path half = Place.beside(file, ".half");
        try {
            own(half);
            try (FileChannel from = FileChannel.open(copy); FileChannel to = FileChannel.open(half, StandardOpenOption.WRITE)) {
                for (long done = 0; done < from.size(); ) {
                    done += from.transferTo(done, from.size() - done, to);
                }
            }
            refuseUnsound(copy, half);
            Store.open(Database.file(half)).close(); // brought up to this version
            Checkup is = refuseUnsound(copy, half);
            return new Restored(is, Place.give(half, file, "before-restore", wall.instant()));
        } finally {
            Place.remove(half);
        }
    }

    /** What came of it. */
    public record Restored(Checkup is, Path aside) {
    }

    private static Checkup refuseUnsound(Path copy, Path half) throws IOException {
        Checkup is = Checkup.of(Database.file(half));
        if (!is.isSound()) {
            throw new IOException(copy + ": is no sound copy of a store (" + is.troubles().get(0) + "); nothing was changed");
        }
        return is;
    }

    /** By SQLite itself, in one reading transaction: the host goes on writing beside it. */
    private static void vacuum(Path file, Path to) throws SQLException {
        try (Connection connection = Database.file(file).onlooker();
             PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
            vacuum.setString(1, to.toString());
            vacuum.execute();
        }
    }

    /** An empty file that only its owner reads: a store holds people's names. */
    private static void own(Path file) throws IOException {
        if (Files.getFileStore(file.toAbsolutePath().getParent()).supportsFileAttributeView("posix")) {
            Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        } else {
            Files.createFile(file);
        }
    }

    static void exists(Path file) throws NoSuchFileException {
        if (!Files.isRegularFile(file)) {
            throw new NoSuchFileException(file.toString());
        }
    }
}
