package org.cupbeam.studio.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.function.Consumer;

/**
 * A store's file is there whole or not at all: it is made beside its place, and then moved there. A host that is killed
 * while it makes its first store leaves no empty file behind, which could not be told from one that has lost everything.
 *
 * @param file where it is to be
 */
record Beginning(Path file) {
    private static final String[] PARTS = {"", "-journal", "-wal", "-shm"};

    /** @param make makes the tables of an empty store in a file that is not there yet */
    void unlessThere(Consumer<Path> make) {
        if (Files.exists(file)) {
            return;
        }
        Path half = file.resolveSibling(file.getFileName() + ".begun");
        try {
            for (String part : PARTS) { // what an earlier try may have left
                Files.deleteIfExists(half.resolveSibling(half.getFileName() + part));
            }
            make.accept(half);
            into(half);
        } catch (IOException e) {
            throw new StoreTrouble("store " + file + " cannot be begun (" + e + "); check that this user may write there, "
                    + "and that the disk has room", e);
        }
    }

    private void into(Path half) throws IOException {
        try (FileChannel channel = FileChannel.open(half, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        Files.move(half, file, StandardCopyOption.ATOMIC_MOVE);
        sync(file.toAbsolutePath().getParent());
    }

    /** Where a folder can be synced, its new entry is on the disk with that. */
    private static void sync(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder)) {
            channel.force(true);
        } catch (IOException onlyFiles) {
            if (!Files.isDirectory(folder)) {
                throw onlyFiles;
            }
        }
    }
}
