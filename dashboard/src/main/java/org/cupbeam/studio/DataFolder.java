package org.cupbeam.studio;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.UUID;

/** The one folder that holds everything, claimed by one process at a time. */
final class DataFolder implements AutoCloseable {
    private final Path path;
    private final FileChannel lock;

    private DataFolder(Path path, FileChannel lock) {
        this.path = path;
        this.lock = lock;
    }

    static DataFolder claim(Path wanted) throws CannotStart {
        Path path = wanted.toAbsolutePath().normalize();
        try {
            make(path);
            FileChannel channel = FileChannel.open(path.resolve("in-use"), StandardOpenOption.CREATE,
                    StandardOpenOption.WRITE);
            if (locked(channel)) {
                return new DataFolder(path, channel);
            }
            channel.close();
            throw new CannotStart("folder " + path + " is in use by another studio", "choose another with --data", null);
        } catch (IOException e) {
            throw new CannotStart("folder " + path + " cannot be written (" + e + ")", "choose another with --data", e);
        }
    }

    Path path() {
        return path;
    }

    /** What tells this host from others that share a broker or a database: made once, kept here. */
    String hostId() throws CannotStart {
        Path file = path.resolve("host-id");
        try {
            if (!Files.exists(file)) {
                Files.writeString(file, UUID.randomUUID().toString().substring(0, 8));
            }
            String id = Files.readString(file).strip();
            if (!id.matches("[a-z0-9-]{1,32}")) {
                throw new CannotStart(file + " holds no id of a host", "delete it; another is made", null);
            }
            return id;
        } catch (IOException e) {
            throw new CannotStart(file + " cannot be read or made (" + e + ")", "choose another folder with --data", e);
        }
    }

    @Override
    public void close() {
        try {
            lock.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What it holds is nobody else's on this machine. One that is there already stays as its owner made it. */
    private static void make(Path path) throws IOException {
        if (Files.isDirectory(path)) {
            return;
        }
        Files.createDirectories(path.getParent());
        boolean posix = Files.getFileStore(path.getParent()).supportsFileAttributeView("posix");
        if (posix) {
            Files.createDirectory(path, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        } else {
            Files.createDirectory(path);
        }
    }

    private static boolean locked(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }
}
