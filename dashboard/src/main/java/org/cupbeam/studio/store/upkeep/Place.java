package org.cupbeam.studio.store.upkeep;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/**
 * The place of a store's file, and how another comes into it. At no moment is there none: a host that starts just then would
 * begin an empty one.
 */
final class Place {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);
    private static final String[] PARTS = {"", "-wal", "-shm", "-journal"};

    private Place() {
    }

    /** A name beside a file's, of which nothing is there. */
    static Path beside(Path file, String suffix) throws IOException {
        Path half = file.toAbsolutePath().resolveSibling(file.getFileName() + suffix);
        remove(half);
        return half;
    }

    static void remove(Path half) throws IOException {
        for (String part : PARTS) {
            Files.deleteIfExists(part(half, part));
        }
    }

    /**
     * Gives a place to a new file, and keeps what was there under another name.
     *
     * @param because as {@code before-restore}
     * @return the old file's name now; null where there was none
     */
    static Path give(Path half, Path file, String because, Instant now) throws IOException {
        belongToTheFoldersOwner(half, file.toAbsolutePath().getParent());
        sync(half);
        Path aside = free(file.toAbsolutePath().resolveSibling(file.getFileName() + "." + because + "-" + TIME.format(now)));
        boolean kept = Files.exists(file);
        if (kept) {
            second(file, aside);
        }
        if (Files.exists(part(file, "-wal"))) { // which must never be taken for the new file's
            Files.move(part(file, "-wal"), part(aside, "-wal"), StandardCopyOption.ATOMIC_MOVE);
            kept = true;
        }
        Files.deleteIfExists(part(file, "-shm"));
        Files.move(half, file, StandardCopyOption.ATOMIC_MOVE);
        sync(file.toAbsolutePath().getParent());
        return kept ? aside : null;
    }

    /** A second name for the same file, or a second file where there can be no such names. */
    private static void second(Path file, Path aside) throws IOException {
        try {
            Files.createLink(aside, file);
        } catch (UnsupportedOperationException | IOException noLinks) {
            Files.copy(file, aside, StandardCopyOption.COPY_ATTRIBUTES);
            sync(aside);
        }
    }

    /** A store that root puts there is still the service's to write. */
    private static void belongToTheFoldersOwner(Path half, Path folder) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(half, PosixFileAttributeView.class);
        if (view != null) {
            PosixFileAttributes of = Files.readAttributes(folder, PosixFileAttributes.class);
            if (!view.readAttributes().owner().equals(of.owner())) {
                view.setOwner(of.owner());
                view.setGroup(of.group());
            }
        }
    }

    private static Path free(Path wanted) {
        Path free = wanted;
        for (int i = 2; (Files.exists(free) || Files.exists(part(free, "-wal"))) && i < 1_000; i++) {
            free = wanted.resolveSibling(wanted.getFileName() + "-" + i);
        }
        return free;
    }

    /** Has a file, or a folder's entries where that can be done, on the disk. */
    static void sync(Path path) throws IOException {
        try (FileChannel channel = FileChannel.open(path)) {
            channel.force(true);
        } catch (IOException onlyFiles) {
            if (!Files.isDirectory(path)) {
                throw onlyFiles;
            }
        }
    }

    static Path part(Path file, String suffix) {
        return file.resolveSibling(file.getFileName() + suffix);
    }
}
